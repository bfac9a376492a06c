// What a tap says and how it is judged, by the table that the page brought with it: nothing is judged here by a rule of its own.
export function byCode(set, limits, code) {
  const at = set.answers.findIndex(a => a.code === code);
  const judged = set.judged[limits];
  return { ...set.answers[at], ...judged.said[judged.by[at]], stacked: false };
}

// Two blades together; nothing where the table knows no such pair.
export function stacked(set, limits, one, other) {
  const all = set.blades;
  const [i, j] = [all.indexOf(one), all.indexOf(other)].sort((a, b) => a - b);
  const at = i * all.length - i * (i + 1) / 2 + (j - i - 1);
  const judged = set.stacked.judged[limits];
  if (judged.by[at] < 0) {
    return null;
  }
  const go = Math.round((one.mm + other.mm) * 10_000) / 10_000;
  const noGo = set.stacked.noGo[at];
  return {
    kind: noGo === null ? "nextNotTried" : "goAndNoGo", go, noGo, stacked: true,
    text: noGo === null ? `${go.toFixed(2)} mm or more` : `${go.toFixed(2)} to ${noGo.toFixed(2)} mm`, ...judged.said[judged.by[at]],
  };
}
