// Counting by taps: each tap is an entry of the queue, and the number shown is what the page was made with and every tap since.
// Taps add up, so none waits for another and nothing is asked twice.

// How a tap is called in the list of what waits.
export function count(form, body) {
  const change = body.taps[0].change;
  return `${form.dataset.label}: ${change > 0 ? "+" : "\u2212"}${Math.abs(change)}`;
}

export function showCounts(entries, renderedAt) {
  for (const row of document.querySelectorAll("[data-counted]")) {
    const shown = {};
    for (const number of row.querySelectorAll("[data-number]")) {
      number.dataset.made ??= number.textContent.trim();
      shown[number.dataset.number] = Number(number.dataset.made) + since(entries, row.dataset.counted, number.dataset.number, renderedAt);
      number.textContent = String(shown[number.dataset.number]);
    }
    if (entries.some(e => tapsOf(e).some(t => t.thing === row.dataset.counted))) {
      const said = row.querySelector("[data-said]");
      said.textContent = words(shown.cameBack - shown.wentIn, shown.wentIn);
    }
  }
}

// Taps that the page does not know of: those that wait, and those that were answered after it was made.
function since(entries, thing, way, renderedAt) {
  return entries.filter(e => e.state === "waiting" || (e.state === "sent" && e.answeredAt >= renderedAt))
    .flatMap(tapsOf).filter(t => t.thing === thing && t.way === way).reduce((sum, t) => sum + t.change, 0);
}

function tapsOf(entry) {
  return Array.isArray(entry.body?.taps) ? entry.body.taps.filter(t => t && Number.isInteger(t.change)) : [];
}

function words(difference, wentIn) {
  return difference === 0 ? (wentIn === 0 ? "none counted" : "all back")
    : difference < 0 ? `${-difference} missing` : `${difference} more came back than went in`;
}
