import type { Body } from '../../../bench/events/index.ts';
import type { Gesture } from './gesture.ts';

export type Grade = Body<'graded'>['grade'];

/** The condition by Salvor's own scale, version 1. */
export const gradeItem = (itemId: string, grade: Grade, text: string): Gesture => ({
  said: grade === 'parts' ? 'graded for parts' : `grade ${grade}`,
  drafts: [{ kind: 'graded', body: { item_id: itemId, scale: 'salvor-1', grade, text } }],
});
