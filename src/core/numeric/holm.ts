/**
 * Chances of chance findings among many, put right for their number: with these, all findings below α together hold one false one with chance α at most. In
 * the order given. Holm (1979), step down.
 */
export function holm(chances: readonly number[]): number[] {
  const order = chances.map((_, index) => index).sort((a, b) => chances[a]! - chances[b]!);
  const adjusted = Array.from(chances);
  let most = 0;
  order.forEach((at, rank) => {
    most = Math.max(most, Math.min(1, (chances.length - rank) * chances[at]!));
    adjusted[at] = most;
  });
  return adjusted;
}
