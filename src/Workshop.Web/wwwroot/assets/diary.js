// A bar of the Diary can be dragged to another time or line. Nothing is moved by that: what it was dropped on is filled into the
// form that moves a visit, where a person looks at it and sends it, or does not.
const minutesApart = 15;
const diary = document.getElementById("diary");
const drawing = diary?.querySelector("svg.phase-bars");
const said = document.getElementById("drag-said");
const map = drawing ? JSON.parse(drawing.dataset.drop) : null;
let held = null;

function at(event) {
  const box = drawing.getBoundingClientRect();
  const scale = drawing.viewBox.baseVal.width / box.width;
  return { x: (event.clientX - box.left) * scale, y: (event.clientY - box.top) * scale };
}

function target(x, y) {
  const row = map.rows.find(r => y >= r.y && y < r.y + map.rowHeight);
  const column = map.columns.find(c => x >= c.x && x <= c.x + c.width);
  if (!row || !column) {
    return null;
  }
  const minute = column.from + Math.round((x - column.x) / column.width * column.minutes / minutesApart) * minutesApart;
  const text = n => String(n).padStart(2, "0");
  return { row, day: column.day, time: `${text(Math.floor(minute / 60))}:${text(minute % 60)}` };
}

function letGo() {
  held?.ghost.remove();
  held = null;
  said.textContent = "";
}

function drop(wanted) {
  const form = new URLSearchParams({ day: wanted.day, time: wanted.time });
  form.set(diary.dataset.by === "bays" ? "bay" : "technician", wanted.row.id);
  location.assign(`${diary.dataset.move.replace("0", held.bar.dataset.card)}?${form}#move`);
}

drawing?.addEventListener("pointerdown", event => {
  const bar = event.target.closest("rect[data-card]");
  if (!bar || event.button !== 0) {
    return;
  }
  const from = at(event);
  const ghost = bar.cloneNode();
  ghost.removeAttribute("data-card");
  ghost.setAttribute("class", "bar ghost");
  drawing.append(ghost);
  held = { bar, ghost, dx: from.x - Number(bar.getAttribute("x")), moved: false, start: from };
  drawing.setPointerCapture(event.pointerId);
  event.preventDefault();
});

drawing?.addEventListener("pointermove", event => {
  if (!held) {
    return;
  }
  const now = at(event);
  held.moved ||= Math.hypot(now.x - held.start.x, now.y - held.start.y) > 6;
  held.ghost.setAttribute("x", now.x - held.dx);
  held.ghost.setAttribute("y", now.y - Number(held.bar.getAttribute("height")) / 2);
  const wanted = target(now.x - held.dx, now.y);
  said.textContent = wanted ? `Job card ${held.bar.dataset.card}: ${wanted.row.name}, ${wanted.day} at ${wanted.time}. Let go to fill the form in.` : "";
});

drawing?.addEventListener("pointerup", event => {
  if (!held) {
    return;
  }
  const now = at(event);
  const wanted = held.moved ? target(now.x - held.dx, now.y) : null;
  if (wanted) {
    drop(wanted);
  }
  letGo();
});

drawing?.addEventListener("pointercancel", letGo);
document.addEventListener("keydown", event => {
  if (event.key === "Escape") {
    letGo();
  }
});
