/** What is known at each level of knowledge. */
export const LEVEL_WORDS: Readonly<Record<number, string>> = {
  0: 'its blocks',
  1: 'its blocks, with readings and photos of good boards',
  2: 'its circuit and the place of every part',
};
