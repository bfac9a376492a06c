// Feeler set and temperature, said once before a row of readings: what was said holds for a while on this device.
import { button } from "./elements.js";

const temperatureHolds = 30 * 60 * 1000;
const keyOf = data => `workshop-bay-${data.number}`;

export const isFresh = takenAt => Date.now() - takenAt < temperatureHolds;

export function remembered(data) {
  const kept = JSON.parse(localStorage.getItem(keyOf(data)) ?? "null");
  const fresh = kept && isFresh(kept.takenAt) && data.sets.some(s => s.id === kept.set);
  return fresh ? kept : { set: data.set, head: data.headC, notCold: null, takenAt: data.headC === null ? 0 : Date.now() };
}

export const isCold = (data, head) => head >= data.cold.lowest && head <= data.cold.highest;

// What was typed; or in words why it is not taken.
export function typedIn(form, data) {
  const typed = new FormData(form);
  const head = Number(String(typed.get("Wish.Head")).replace(",", "."));
  const why = String(typed.get("Wish.NotCold") ?? "").trim();
  const cold = isCold(data, head);
  if (!typed.get("Wish.Set") || String(typed.get("Wish.Head")).trim() === "" || Number.isNaN(head) || (!cold && !why)) {
    return { refused: Number.isNaN(head) ? "The temperature is no number." : `${head} °C: ${data.cold.words}. Let it stand, or say why it is kept.` };
  }
  const said = { set: typed.get("Wish.Set"), head, notCold: cold ? null : why, takenAt: Date.now() };
  localStorage.setItem(keyOf(data), JSON.stringify(said));
  return { said };
}

export function addStepper(setup) {
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
