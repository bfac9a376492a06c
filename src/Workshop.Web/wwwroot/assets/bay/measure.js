// Entry with taps: one tap on the blade that goes, and the next valve is asked for. What is tapped says pad.js, what a tap says
// taps.js; in which turn valves are read, and how map and table show them, valves.js.
import { queue } from "./queue.js";
import { element, button } from "./elements.js";
import { blades, askReason } from "./pad.js";
import { addStepper, isCold, isFresh, remembered, typedIn } from "./setup.js";
import { drawMap, drawTable, turnsOf } from "./valves.js";

export function measure(data, renderedAt) {
  const root = document.querySelector("[data-measure]");
  const part = name => root.querySelector(`[data-${name}]`);
  const lobes = new Map(data.lobes.map(l => [l.key, { ...l }]));
  const { positionOf, next } = turnsOf(data, lobes);
  const state = { ...remembered(data), crankAt: data.crankAt, now: null, mode: "goes", first: null, reason: null, last: null, entering: false };

  const set = () => data.sets.find(s => s.id === state.set);
  const ready = () => Boolean(set()) && state.head !== null && state.head !== undefined && isFresh(state.takenAt);

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
    showValves();
    drawTable(lobes);
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

  function showValves() {
    drawMap(root, data, lobes, state.now, positionOf(state.now));
  }

  function draw() {
    showValves();
    drawNow();
    drawPad();
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
      pad.replaceChildren(askReason(reason => {
        state.reason = reason;
        drawPad();
      }));
    } else {
      pad.replaceChildren(blades({ state, set: set(), lobe, enter, redraw: drawPad }));
    }
  }

  function drawSummary() {
    part("setup").querySelector("summary").textContent = ready()
      ? `${set().name}, calibration due ${set().calibrationDue}; ${state.head} °C${isCold(data, state.head) ? "" : ", not cold"}`
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
    const { said, refused } = typedIn(event.target, data);
    if (refused) {
      part("answer").replaceChildren(element("strong", "", refused));
      return;
    }
    Object.assign(state, said);
    part("setup").open = false;
    part("answer").replaceChildren();
    draw();
  }
}
