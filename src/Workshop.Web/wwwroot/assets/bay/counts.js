// Counting by taps: each tap is an entry of the queue, and the number shown is what the service knew last and every tap that waits.
// What it knew last is told by the number of its taps, which only ever grows: a page that was made while a tap was under way may
// know of it or not, and no clock tells.

// How a tap is called in the list of what waits.
export function count(form, body) {
  const change = body.taps[0].change;
  return `${form.dataset.label}: ${change > 0 ? "+" : "\u2212"}${Math.abs(change)}`;
}

export function showCounts(entries) {
  for (const row of document.querySelectorAll("[data-counted]")) {
    const thing = row.dataset.counted;
    const page = { taps: Number(row.dataset.taps), wentIn: Number(row.dataset.wentIn), cameBack: Number(row.dataset.cameBack) };
    const known = entries.filter(e => e.state === "sent").flatMap(e => e.answer?.things ?? []).filter(t => t.thing === thing)
      .reduce((most, t) => t.taps > most.taps ? t : most, page);
    const shown = { wentIn: known.wentIn + waiting(entries, thing, "wentIn"), cameBack: known.cameBack + waiting(entries, thing, "cameBack") };
    for (const number of row.querySelectorAll("[data-number]")) {
      number.textContent = String(shown[number.dataset.number]);
    }
    if (shown.wentIn !== page.wentIn || shown.cameBack !== page.cameBack) {
      row.querySelector("[data-said]").textContent = words(shown.cameBack - shown.wentIn, shown.wentIn);
    }
  }
}

function waiting(entries, thing, way) {
  return entries.filter(e => e.state === "waiting").flatMap(e => e.body?.taps ?? [])
    .filter(t => t?.thing === thing && t.way === way).reduce((sum, t) => sum + t.change, 0);
}

function words(difference, wentIn) {
  return difference === 0 ? (wentIn === 0 ? "none counted" : "all back")
    : difference < 0 ? `${-difference} not back` : `${difference} more came back than went in`;
}
