// What is tapped at a valve: the blades, and why it is read again where it is.
import { element, button } from "./elements.js";
import { byCode, stacked } from "./taps.js";

const reasons = ["Wrong blade tapped", "Blade slipped or was bent", "Wrong valve tapped", "Lobe was not away", "Measured again as asked", "Measured again, another hand"];

// A tap of a blade is an answer, or the first of two; what is tapped stands in state until it is one.
export function blades({ state, set, lobe, enter, redraw }) {
  const box = document.createElement("div");
  const grid = element("div", "blades", "");
  set.blades.forEach(blade => {
    const within = byCode(set, lobe.limits, `goes:${blade.mm}`).verdict === "within";
    const b = button(blade.mark, within ? "in-range" : "quiet", () => tapBlade(blade));
    b.setAttribute("aria-label", `${blade.mark} ${set.unit}`);
    if (state.first === blade) {
      b.setAttribute("aria-pressed", "true");
    }
    grid.append(b);
  });
  const asked = {
    goes: `Tap the thickest blade that goes with light drag, in ${set.unit}`,
    only: "Tap the blade that goes; the next was not tried",
    stack: state.first ? `${state.first.mark} and: tap the second blade` : "Two blades together: tap the first",
  }[state.mode];
  const more = element("div", "taps", "");
  more.append(
    button("None enters", "quiet", () => enter(byCode(set, lobe.limits, "none"))),
    button("Thickest still loose", "quiet", () => enter(byCode(set, lobe.limits, "loose"))),
    toggle("Next not tried", "only"),
    toggle("Two blades", "stack"));
  box.append(element("p", "asked", asked), grid, more);
  return box;

  function toggle(text, mode) {
    const b = button(text, "quiet", () => {
      state.mode = state.mode === mode ? "goes" : mode;
      state.first = null;
      redraw();
    });
    b.setAttribute("aria-pressed", String(state.mode === mode));
    return b;
  }

  function tapBlade(blade) {
    if (state.mode !== "stack") {
      enter(byCode(set, lobe.limits, `${state.mode}:${blade.mm}`));
    } else if (!state.first || state.first === blade) {
      state.first = state.first === blade ? null : blade;
      redraw();
    } else {
      const pair = stacked(set, lobe.limits, state.first, blade);
      if (pair) {
        enter(pair);
      }
    }
  }
}

export function askReason(then) {
  const box = element("div", "taps", "");
  box.append(element("p", "", "It is read already. Why is it read again?"));
  reasons.forEach(text => box.append(button(text, "quiet", () => then(text))));
  const free = document.createElement("input");
  free.setAttribute("aria-label", "Another reason");
  free.maxLength = 400;
  box.append(free, button("Because of that", "quiet", () => {
    if (free.value.trim()) {
      then(free.value.trim());
    }
  }));
  return box;
}
