/** Bits that it takes on average to say which of several things is the case. Chances need not add up to 1: they are scaled. */
export function entropyBits(chances: Iterable<number>): number {
  const list = [...chances].filter((chance) => chance > 0);
  const sum = list.reduce((a, b) => a + b, 0);
  return list.reduce((bits, chance) => bits - (chance / sum) * Math.log2(chance / sum), 0);
}
