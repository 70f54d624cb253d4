import type { Body } from '../../../bench/events/index.ts';
import type { Judged } from '../../../bench/grading/index.ts';
import type { Gesture } from './gesture.ts';

export type Grade = Body<'graded'>['grade'];

/** The condition by Salvor's own scale, version 1, with what each criterion was found to be. */
export const gradeItem = (itemId: string, grade: Grade, text: string, judged: Judged = {}): Gesture => {
  const found = Object.entries(judged).flatMap(([criterion, value]) =>
    value === undefined ? [] : [{ criterion: criterion as keyof Judged, value }],
  );
  return {
    said: grade === 'parts' ? 'graded for parts' : `grade ${grade}`,
    drafts: [{ kind: 'graded', body: { item_id: itemId, scale: 'salvor-1', grade, text, ...(found.length > 0 ? { judged: found } : {}) } }],
  };
};
