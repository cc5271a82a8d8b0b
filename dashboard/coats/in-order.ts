/** Things in the order in which they stood before; those that are new, behind them. */
export function inOrder<T extends { readonly id: string }>(
  things: readonly T[],
  before: readonly string[],
): readonly T[] {
  const stood = before.flatMap((id) => things.find((one) => one.id === id) ?? []);
  return [...stood, ...things.filter((one) => !stood.includes(one))];
}
