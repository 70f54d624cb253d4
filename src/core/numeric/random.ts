/** A seeded stream of uniform numbers in [0, 1): the same seed gives the same stream on every machine. */
export type RandomStream = () => number;

/**
 * The stream of one seed. Generator: sfc32 (Chris Doty-Humphrey, PractRand; 128-bit state), seeded by a 32-bit mix
 * of the text; the first 15 outputs are thrown away as its author advises. Constants from memory.
 */
export function randomStream(seed: string | number): RandomStream {
  let [a, b, c] = seedWords(String(seed));
  let counter = 1;
  const next = (): number => {
    const t = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + t) | 0;
    return (t >>> 0) / 2 ** 32;
  };
  for (let i = 0; i < 15; i++) next();
  return next;
}

function seedWords(text: string): [number, number, number] {
  const words: [number, number, number] = [0x9e3779b9 | 0, 0x243f6a88 | 0, 0xb7e15162 | 0];
  for (let i = 0; i < text.length; i++) {
    const w = i % 3;
    words[w] = Math.imul(words[w]! ^ text.charCodeAt(i), 0x85ebca6b);
    words[w] = words[w]! ^ (words[w]! >>> 13);
  }
  return [words[0], words[1] ^ Math.imul(words[0], 0xc2b2ae35), words[2] ^ text.length];
}
