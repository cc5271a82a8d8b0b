import { median, spread } from '../parts/stats.mjs';

/** What both gave, and the median of the pairs' ratios. */
export function sides(pairs, key, digits) {
  const values = (subject) => pairs.map((pair) => pair[subject][key]);
  return {
    ours: spread(values('ours'), digits),
    barest: spread(values('barest'), digits),
    ratio: median(pairs.map(({ ours, barest }) => ours[key] / barest[key])),
  };
}
