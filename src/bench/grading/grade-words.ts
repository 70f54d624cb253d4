import type { Grade } from './scale.ts';

/** What each grade means in short, for buttons and reports. */
export const GRADE_MEANS: Readonly<Record<Grade | 'parts', string>> = {
  A: 'Works fully; no mark seen at arm’s length',
  B: 'Works fully; light marks',
  C: 'Works fully; plain wear or marks',
  D: 'Works, with a named defect or a heavy mark',
  parts: 'Does not work: for parts',
};
