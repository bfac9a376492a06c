// Entry with taps: one tap on the blade that goes, and the next valve is asked for. The page brings with it what every tap says
// and how it is judged (data), so that nothing is judged here by a rule of its own.
import { queue } from "./queue.js";

const temperatureHolds = 30 * 60 * 1000;
const reasons = ["Blade slipped or was bent", "Wrong valve tapped", "Lobe was not away", "Measured again as asked", "Measured again, another hand"];

export function measure(data, renderedAt) {
  const root = document.querySelector("[data-measure]");
  const part = name => root.querySelector(`[data-${name}]`);
  const lobes = new Map(data.lobes.map(l => [l.key, { ...l }]));
  const order = data.positions.flatMap(p => p.lobes.map(key => ({ key, position: p })));
  const positionOf = key => order.find(o => o.key === key)?.position;
  const setupKey = `workshop-bay-${data.number}`;
  const state = { ...remembered(), crankAt: data.crankAt, now: null, mode: "goes", first: null, reason: null, last: null, entering: false };

  const set = () => data.sets.find(s => s.id === state.set);
  const ready = () => Boolean(set()) && state.head !== null && state.head !== undefined && Date.now() - state.takenAt < temperatureHolds;

  part("setup").querySelector("form").addEventListener("submit", useSetup);
  addStepper(part("setup"));
  root.querySelectorAll("a[data-valve]").forEach(a => a.addEventListener("click", event => {
    event.preventDefault();
    tapValve(a.dataset.valve);
  }));
  queue.addEventListener("answered", event => answered(event.detail));
  queue.addEventListener("change", overlay);
  part("setup").open = !ready();
  overlay().then(() => go(next(null)));

  function remembered() {
    const kept = JSON.parse(localStorage.getItem(setupKey) ?? "null");
    const fresh = kept && Date.now() - kept.takenAt < temperatureHolds && data.sets.some(s => s.id === kept.set);
    return fresh ? kept : { set: data.set, head: data.headC, notCold: null, takenAt: data.headC === null ? 0 : Date.now() };
  }

  // What was entered here since the page was made lies over what the page says.
  async function overlay() {
    const entries = (await queue.list()).filter(e => e.number === data.number && e.stage === data.stage);
    data.lobes.forEach(l => Object.assign(lobes.get(l.key), { attempts: l.attempts, open: l.open, reading: l.reading, state: null }));
    state.crankAt = data.crankAt;
    for (const e of entries) {
      const lobe = lobes.get(e.lobe);
      const said = e.answer?.readings?.[0];
      if (e.position && (e.state !== "sent" || Date.parse(e.answer.confirmedAt) >= renderedAt)) {
        state.crankAt = e.position;
      }

      // What the page shows already is told by its attempt: an answer that was lost on its way may be written all the same, while
      // its entry still waits.
      if (lobe && (e.state !== "sent" || said?.attempt > lobe.attempts)) {
        lobe.attempts = Math.max(lobe.attempts, said?.attempt ?? e.body.readings[0].attempt);
        lobe.open = false;
        lobe.reading = { text: e.shown, verdict: said?.verdict ?? e.verdict, words: said?.words ?? e.words, by: e.name, carried: false };
        lobe.state = e.state === "conflict" ? "refused, see above" : e.state === "sent" ? null : "waiting";
      }
    }
    drawMap();
    drawTable();
  }

  function next(after) {
    const at = order.findIndex(o => o.key === after);
    const here = positionOf(after);
    const inHere = order.filter(o => o.position === here);
    const inTurn = at < 0 ? order : [
      ...inHere.filter(o => order.indexOf(o) > at), ...inHere.filter(o => order.indexOf(o) < at),
      ...order.filter((o, i) => o.position !== here && i > at), ...order.filter((o, i) => o.position !== here && i < at)];
    return inTurn.find(o => lobes.get(o.key).open)?.key ?? null;
  }

  function go(key) {
    Object.assign(state, { now: key, mode: "goes", first: null, reason: null });
    draw();
  }

  function tapValve(valve) {
    const own = data.lobes.filter(l => l.valve === valve).map(l => l.key);
    const open = own.find(key => lobes.get(key).open && key !== state.now);
    const other = own[(own.indexOf(state.now) + 1) % own.length];
    go(open ?? other);
  }

  function draw() {
    drawMap();
    drawNow();
    drawPad();
  }

  function drawMap() {
    const here = positionOf(state.now);
    root.querySelectorAll("a[data-valve]").forEach(a => {
      const own = data.lobes.filter(l => l.valve === a.dataset.valve).map(l => lobes.get(l.key));
      const shown = own.find(l => l.key === state.now) ?? own.find(l => l.open) ?? own[0];
      const isNow = shown.key === state.now;
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

  function drawTable() {
    document.querySelectorAll("tr[data-lobe]").forEach(row => {
      const lobe = lobes.get(row.dataset.lobe);
      row.querySelector("[data-read]").textContent = lobe.reading?.text ?? "";
      row.querySelector("[data-verdict]").textContent = lobe.reading
        ? [lobe.reading.words, lobe.reading.carried ? "carried over" : null, lobe.state].filter(Boolean).join(", ") : "not read";
    });
  }

  function drawNow() {
    const lobe = lobes.get(state.now);
    if (!lobe) {
      part("now").replaceChildren(element("h2", "valve-now", "All are read"), element("p", "", "Tap a valve to read it again."));
      return;
    }
    const position = positionOf(lobe.key);
    const where = element("p", "position-now", ` ${position.mark}`);
    where.prepend(element("strong", "", position.name));
    part("now").replaceChildren(
      where,
      element("h2", "valve-now", lobe.name),
      element("p", "limits-now figure", [lobe.range, lobe.expected].filter(Boolean).join("; ")),
      ...(lobe.reading ? [element("p", "", `Stands at ${lobe.reading.text}, ${lobe.reading.words}, by ${lobe.reading.by}${lobe.reading.carried ? ", carried over" : ""}.`)] : []));
  }

  function drawPad() {
    const pad = part("pad");
    const lobe = lobes.get(state.now);
    drawSummary();
    if (!lobe) {
      pad.replaceChildren();
    } else if (!ready()) {
      part("setup").open = true;
      pad.replaceChildren(element("p", "", "Choose the feeler set and say the temperature first."));
    } else if (positionOf(lobe.key).name !== state.crankAt) {
      pad.replaceChildren(button("Mark right, lobes away: measure here", "wide-button", confirmPosition));
    } else if (lobe.reading && !lobe.reading.carried && state.reason === null) {
      pad.replaceChildren(askReason());
    } else {
      pad.replaceChildren(blades(lobe));
    }
  }

  function drawSummary() {
    const cold = state.head >= data.cold.lowest && state.head <= data.cold.highest;
    part("setup").querySelector("summary").textContent = ready()
      ? `${set().name}, calibration due ${set().calibrationDue}; ${state.head} °C${cold ? "" : ", not cold"}`
      : "Feeler set and temperature first";
  }

  async function confirmPosition() {
    const position = positionOf(state.now).name;
    await queue.add({
      url: data.positionPost, body: { stage: data.stage, position, markAndLobes: true }, label: `${position}: mark and lobes`,
      subject: `${data.number}/position`, number: data.number, stage: data.stage, position,
    });
    await overlay();
    draw();
  }

  function askReason() {
    const box = element("div", "taps");
    box.append(element("p", "", "It is read already. Why is it read again?"));
    reasons.forEach(text => box.append(button(text, "quiet", () => {
      state.reason = text;
      drawPad();
    })));
    const free = document.createElement("input");
    free.setAttribute("aria-label", "Another reason");
    free.maxLength = 400;
    box.append(free, button("Because of that", "quiet", () => {
      if (free.value.trim()) {
        state.reason = free.value.trim();
        drawPad();
      }
    }));
    return box;
  }

  function blades(lobe) {
    const box = document.createElement("div");
    const judged = set().judged[lobe.limits];
    const grid = element("div", "blades");
    set().blades.forEach(blade => {
      const at = set().answers.findIndex(a => a.code === `goes:${blade.mm}`);
      const within = judged.said[judged.by[at]].verdict === "within";
      const b = button(blade.mark, within ? "in-range" : "quiet", () => tapBlade(blade));
      b.setAttribute("aria-label", `${blade.mark} ${set().unit}`);
      if (state.first === blade) {
        b.setAttribute("aria-pressed", "true");
      }
      grid.append(b);
    });
    const asked = {
      goes: `Tap the thickest blade that goes with light drag, in ${set().unit}`,
      only: "Tap the blade that goes; the next was not tried",
      stack: state.first ? `${state.first.mark} and: tap the second blade` : "Two blades together: tap the first",
    }[state.mode];
    const more = element("div", "taps");
    more.append(
      button("None enters", "quiet", () => enter(byCode("none"))),
      button("Thickest still loose", "quiet", () => enter(byCode("loose"))),
      toggle("Next not tried", "only"),
      toggle("Two blades", "stack"));
    box.append(element("p", "asked", asked), grid, more);
    return box;
  }

  function toggle(text, mode) {
    const b = button(text, "quiet", () => {
      state.mode = state.mode === mode ? "goes" : mode;
      state.first = null;
      drawPad();
    });
    b.setAttribute("aria-pressed", String(state.mode === mode));
    return b;
  }

  function tapBlade(blade) {
    if (state.mode !== "stack") {
      enter(byCode(`${state.mode}:${blade.mm}`));
    } else if (!state.first || state.first === blade) {
      state.first = state.first === blade ? null : blade;
      drawPad();
    } else {
      const pair = stacked(state.first, blade);
      if (pair) {
        enter(pair);
      }
    }
  }

  function byCode(code) {
    const at = set().answers.findIndex(a => a.code === code);
    const judged = set().judged[lobes.get(state.now).limits];
    return { ...set().answers[at], ...judged.said[judged.by[at]], stacked: false };
  }

  function stacked(one, other) {
    const all = set().blades;
    const [i, j] = [all.indexOf(one), all.indexOf(other)].sort((a, b) => a - b);
    const at = i * all.length - i * (i + 1) / 2 + (j - i - 1);
    const judged = set().stacked.judged[lobes.get(state.now).limits];
    if (judged.by[at] < 0) {
      return null;
    }
    const go = Math.round((one.mm + other.mm) * 10_000) / 10_000;
    const noGo = set().stacked.noGo[at];
    return {
      kind: noGo === null ? "nextNotTried" : "goAndNoGo", go, noGo, stacked: true,
      text: noGo === null ? `${go.toFixed(2)} mm or more` : `${go.toFixed(2)} to ${noGo.toFixed(2)} mm`, ...judged.said[judged.by[at]],
    };
  }

  // Until the screen has moved on, a further tap is the same one that bounced, no reading of its own.
  async function enter(said) {
    if (state.entering) {
      return;
    }
    state.entering = true;
    try {
      await write(said);
    } finally {
      state.entering = false;
    }
  }

  async function write(said) {
    const lobe = lobes.get(state.now);
    const reason = state.reason;
    const body = {
      instrumentId: state.set, headTemperatureC: state.head, temperatureMethod: data.cold.method,
      measuredAt: new Date(await queue.now()).toISOString(),
      readings: [{ valve: lobe.valve, lobe: lobe.lobe, stage: data.stage, kind: said.kind, goMm: said.go, noGoMm: said.noGo, stacked: said.stacked, attempt: lobe.attempts + 1 }],
    };
    if (reason) {
      body.reason = reason;
    }
    if (state.notCold) {
      body.keptWhyNotCold = state.notCold;
    }
    const kept = await queue.add({
      url: data.post, body, label: `${lobe.name}: ${said.text}`, subject: `${data.number}/${data.stage}/${lobe.key}`,
      number: data.number, stage: data.stage, lobe: lobe.key, shown: said.text, verdict: said.verdict, words: said.words,
    });
    state.last = kept.seq;
    answer(lobe, said.text, said.words, lobe.expected, ["Checked on the device, history not asked."]);
    await overlay();
    go(next(lobe.key));
  }

  function answered({ entry, answer: said }) {
    const lobe = lobes.get(entry.lobe);
    const read = said.readings?.[0];
    if (entry.seq !== state.last || !lobe || !read) {
      return;
    }
    const expected = read.expected ? `expected ${read.expected.fromMm.toFixed(2)} to ${read.expected.toMm.toFixed(2)} mm` : lobe.expected;
    const more = [...said.checks, ...said.warnings];
    answer(lobe, entry.shown, read.words, expected, more);
    if (read.expected?.measureAgain || more.length > 0) {
      part("answer").append(button("Measure it again", "quiet", () => go(lobe.key)));
    }
  }

  function answer(lobe, text, words, expected, more) {
    part("answer").replaceChildren(
      element("strong", "", `${lobe.name}: ${words}`),
      element("span", "figure", [text, expected].filter(Boolean).join("; ")),
      ...more.map(m => element("p", "", m)));
  }

  function useSetup(event) {
    event.preventDefault();
    const form = new FormData(event.target);
    const head = Number(String(form.get("Wish.Head")).replace(",", "."));
    const why = String(form.get("Wish.NotCold") ?? "").trim();
    const cold = head >= data.cold.lowest && head <= data.cold.highest;
    if (!form.get("Wish.Set") || String(form.get("Wish.Head")).trim() === "" || Number.isNaN(head) || (!cold && !why)) {
      part("answer").replaceChildren(element("strong", "", Number.isNaN(head) ? "The temperature is no number." : `${head} °C: ${data.cold.words}. Let it stand, or say why it is kept.`));
      return;
    }
    Object.assign(state, { set: form.get("Wish.Set"), head, notCold: cold ? null : why, takenAt: Date.now() });
    localStorage.setItem(setupKey, JSON.stringify({ set: state.set, head: state.head, notCold: state.notCold, takenAt: state.takenAt }));
    part("setup").open = false;
    part("answer").replaceChildren();
    draw();
  }
}

function addStepper(setup) {
  const input = setup.querySelector("[name='Wish.Head']");
  const step = by => () => {
    const value = Number(input.value.replace(",", "."));
    input.value = input.value.trim() === "" || Number.isNaN(value) ? "20" : String(Math.round((value + by) * 10) / 10);
  };
  const less = button("−", "quiet", step(-0.5));
  const more = button("+", "quiet", step(0.5));
  less.setAttribute("aria-label", "Half a degree less");
  more.setAttribute("aria-label", "Half a degree more");
  input.before(less);
  input.after(more);
}

function word(verdict) {
  return { within: "within", tooTight: "tight", tooWide: "wide", notDecided: "open" }[verdict] ?? "";
}

function short(text) {
  return text.startsWith("below ") ? `<${text.slice(6).replace(" mm", "")}` : text.split(" ")[0];
}

function element(name, className, text) {
  const e = document.createElement(name);
  e.className = className;
  e.textContent = text;
  return e;
}

function button(text, className, then) {
  const b = element("button", className, text);
  b.type = "button";
  b.addEventListener("click", then);
  return b;
}
