/**
 * Skipping about. FAA-H-8083-31 vol. 1 ch. 3 has the iron skip from one end to the other and then to the middle, rather
 * than go along; what comes after the middle is ours: the van der Corput sequence, which leaves no stretch long without.
 */

/**
 * The nth number of the van der Corput sequence in base 2: the binary digits of n reversed behind the point. With
 * n = sum of d_k 2^k it is the sum of d_k 2^(-k-1), so 1/2, 1/4, 3/4, 1/8, 5/8, ... from n = 1 on.
 * @param n whole, 0 to 2^31
 */
export function corput(n: number): number {
  let value = 0;
  for (let [left, place] = [n, 0.5]; left > 0; left = Math.floor(left / 2), place /= 2)
    value += (left % 2) * place;
  return value;
}

/**
 * The order in which to take places that lie in a row: the first, the last, then those nearest to the numbers of the van
 * der Corput sequence between them, each once. Of three that is one end, the other, the middle.
 * @param count how many places
 * @returns their indices, 0 to count - 1
 */
export function skipOrder(count: number): readonly number[] {
  const order = new Set<number>();
  if (count > 0) order.add(0).add(count - 1);
  for (let n = 1; order.size < count; n += 1) order.add(Math.round(corput(n) * (count - 1)));
  return [...order];
}
