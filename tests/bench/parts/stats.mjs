/** The q-th quantile (0 to 1) of values in any order, between neighbours in a straight line; NaN of none. */
export function quantile(values, q) {
  const sorted = Float64Array.from(values).sort();
  const at = (sorted.length - 1) * q;
  const below = sorted[Math.floor(at)] ?? Number.NaN;
  const above = sorted[Math.ceil(at)] ?? Number.NaN;
  return below + (above - below) * (at - Math.floor(at));
}

export const median = (values) => quantile(values, 0.5);

/** The median, with the lowest and highest beside it where there are several. */
export function spread(values, digits) {
  const text = median(values).toFixed(digits);
  if (values.length < 2) return text;
  return `${text} (${Math.min(...values).toFixed(digits)}..${Math.max(...values).toFixed(digits)})`;
}
