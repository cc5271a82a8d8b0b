/** Numbers from 0 to 1 that are the same at every run: a linear congruential generator (Numerical Recipes, ch. 7.1). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}
