// The valves of the screen: in which turn they are read, how the map and the table show them.

// From valve to valve where the crankshaft stands, then on to the next position in running direction.
export function turnsOf(data, lobes) {
  const order = data.positions.flatMap(p => p.lobes.map(key => ({ key, position: p })));
  const positionOf = key => order.find(o => o.key === key)?.position;

  function next(after) {
    const at = order.findIndex(o => o.key === after);
    const here = positionOf(after);
    const inHere = order.filter(o => o.position === here);
    const inTurn = at < 0 ? order : [
      ...inHere.filter(o => order.indexOf(o) > at), ...inHere.filter(o => order.indexOf(o) < at),
      ...order.filter((o, i) => o.position !== here && i > at), ...order.filter((o, i) => o.position !== here && i < at)];
    return inTurn.find(o => lobes.get(o.key).open)?.key ?? null;
  }

  return { positionOf, next };
}

export function drawMap(root, data, lobes, now, here) {
  root.querySelectorAll("a[data-valve]").forEach(a => {
    const own = data.lobes.filter(l => l.valve === a.dataset.valve).map(l => lobes.get(l.key));
    const shown = own.find(l => l.key === now) ?? own.find(l => l.open) ?? own[0];
    const isNow = shown.key === now;
    a.classList.toggle("now", isNow);
    a.classList.toggle("elsewhere", !own.some(l => here?.lobes.includes(l.key)));
    if (isNow) {
      a.setAttribute("aria-current", "true");
    } else {
      a.removeAttribute("aria-current");
    }
    const r = shown.reading;
    const written = r ? [short(r.text), word(r.verdict)] : ["", ""];
    a.querySelector(".reading").textContent = written[0];
    a.querySelector(".word").textContent = written[1];
    const said = r ? ` ${written.join(" ")}: ${r.text}, ${r.words}` : ": not read";
    a.setAttribute("aria-label", `${shown.spoken}${said}${shown.state ? `, ${shown.state}` : ""}`);
  });
}

export function drawTable(lobes) {
  document.querySelectorAll("tr[data-lobe]").forEach(row => {
    const lobe = lobes.get(row.dataset.lobe);
    row.querySelector("[data-read]").textContent = lobe.reading?.text ?? "";
    row.querySelector("[data-verdict]").textContent = lobe.reading
      ? [lobe.reading.words, lobe.reading.carried ? "carried over" : null, lobe.state].filter(Boolean).join(", ") : "not read";
  });
}

function word(verdict) {
  return { within: "within", tooTight: "tight", tooWide: "wide", notDecided: "open" }[verdict] ?? "";
}

function short(text) {
  return text.startsWith("below ") ? `<${text.slice(6).replace(" mm", "")}` : text.split(" ")[0];
}
