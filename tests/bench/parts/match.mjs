/**
 * How long each number took from being sent to being seen, ms. The same number comes again only after a while, so the
 * last time that it was sent before it was seen is the one that was seen.
 * @template T
 * @param {readonly { value: T, atMs: number }[]} sent in order
 * @param {readonly { value: T, atMs: number }[]} seen
 * @returns {{ latenciesMs: number[], unknown: number }} `unknown` counts what was seen and never sent
 */
export function match(sent, seen) {
  const timesOf = new Map();
  for (const { value, atMs } of sent) {
    const times = timesOf.get(value);
    if (times === undefined) timesOf.set(value, [atMs]);
    else times.push(atMs);
  }
  const latenciesMs = [];
  let unknown = 0;
  for (const { value, atMs } of seen) {
    const sentMs = lastBefore(timesOf.get(value) ?? [], atMs);
    if (sentMs === null) unknown += 1;
    else latenciesMs.push(atMs - sentMs);
  }
  return { latenciesMs, unknown };
}

function lastBefore(times, atMs) {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle] <= atMs) low = middle + 1;
    else high = middle;
  }
  return low === 0 ? null : times[low - 1];
}
