import type { Criterion, Scale } from './scale.ts';

/** For a shell with what a buyer sees on it. */
export const MARKS = ['none', 'light', 'plain', 'heavy'] as const;

const CRITERIA: readonly Criterion[] = [
  {
    id: 'function',
    name: 'Function',
    unit: 'steps of proof that failed or were signed off',
    atMost: { A: 0, B: 0, C: 0, D: 2 },
    examples: { A: 'Every function passes', D: 'A named function is missing, the rest passes' },
  },
  {
    id: 'picture',
    name: 'Dead pixels and lines',
    unit: 'dots; a line counts as 20',
    atMost: { A: 0, B: 2, C: 8, D: 60 },
    examples: {
      A: 'None',
      B: 'One or two, off the middle',
      C: 'A few, seen when looked for',
      D: 'Up to three lines, the picture can be used',
    },
  },
  {
    id: 'light',
    name: 'Evenness of the picture',
    unit: 'darkest place below the middle, %',
    atMost: { A: 20, B: 30, C: 45, D: 70 },
    examples: { A: 'Even to the eye', C: 'A darker corner or a faint stain', D: 'A plain stain or a dark edge' },
  },
  {
    id: 'sound',
    name: 'Sound against the reference unit',
    unit: 'dB quieter',
    atMost: { A: 2, B: 4, C: 8, D: 20 },
    examples: { A: 'As the reference', C: 'Plainly quieter', D: 'Weak or crackling at some setting' },
  },
  {
    id: 'distortion',
    name: 'Distortion of a tone',
    unit: '%, above that of the reference unit',
    atMost: { A: 2, B: 4, C: 8, D: 30 },
    examples: { A: 'Clear', C: 'Rough when loud', D: 'Rough at any setting' },
  },
  {
    id: 'colour',
    name: 'Colour of the shell',
    unit: 'ΔE00 from an unfaded one',
    atMost: { A: 2, B: 5, C: 10, D: 40 },
    examples: { A: 'No difference beside a new one', B: 'Seen beside a new one only', C: 'Plainly yellowed', D: 'Brown or blotched' },
  },
  {
    id: 'marks',
    name: 'Marks of the shell',
    unit: `0 ${MARKS[0]}, 1 ${MARKS[1]}, 2 ${MARKS[2]}, 3 ${MARKS[3]}`,
    atMost: { A: 0, B: 1, C: 2, D: 3 },
    examples: {
      A: 'No mark seen at arm’s length',
      B: 'Light scuffs, seen at reading distance',
      C: 'Scratches that a nail feels, worn print, a small dent',
      D: 'A crack, a missing cover, a broken post',
    },
  },
  {
    id: 'battery',
    name: 'Battery',
    unit: '% of its printed capacity that is lost',
    atMost: { A: 10, B: 20, C: 40, D: 100 },
    examples: { A: 'New or as new', B: 'Well', C: 'Worn, still useful', D: 'Spent, or none in it' },
  },
  {
    id: 'originality',
    name: 'Originality',
    unit: 'outer parts that are not its own',
    atMost: { A: 1, B: 2, C: 6, D: 20 },
    examples: { A: 'At most one outer part replaced, and said', C: 'Shell, lens or keys of another make' },
  },
];

/** The first written scale. Limits are common practice, no source; no free standard gives one for used handhelds (ISO 20245 is for trade between countries). */
export const SCALE_1: Scale = { id: 'salvor-1', criteria: CRITERIA };
