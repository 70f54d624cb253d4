import type { Side } from '../actions/add-photos.ts';

/** What a photo shows, in words. */
export const SIDE_WORDS: Readonly<Record<Side, string>> = {
  front: 'Front',
  back: 'Back',
  inside: 'Inside',
  'board-front': 'Board, front',
  'board-back': 'Board, back',
  other: 'Other',
};

/** The side of a photo, also of one from a newer version. */
export const sideWords = (side: string): string => SIDE_WORDS[side as Side] ?? side;
