/**
 * A uniform number in [0, 1) that depends on nothing but its three seeds, so that a thing has the same luck in the same outcome
 * whatever else lies in the pile or is decided. Mixing by the 32-bit finaliser of MurmurHash3 (A. Appleby; constants from memory).
 */
export function luckOf(seed: number, thing: number, outcome: number): number {
  let h = mix(thing ^ Math.imul(outcome + 1, 0x9e3779b1));
  h = mix(h ^ seed);
  return h / 2 ** 32;
}

function mix(x: number): number {
  let h = x | 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

/** A standard normal number from two uniform ones in [0, 1) (Box & Muller 1958). */
export const normalFrom = (u: number, v: number): number => Math.sqrt(-2 * Math.log(1 - u)) * Math.cos(2 * Math.PI * v);
