import type { CSSProperties } from 'react';

/** A finger reaches so far around the middle of its touch, px. */
export const FINGER_PX = 14;
/** So close that the names of small parts can be read. */
const NAMES_FROM = 1.9;

/** Classes of the picture of a board that is seen so close. */
export const boardClasses = (zoom: number, isDrawing: boolean): string =>
  ['board board-map', zoom > 1 && 'board-near', isDrawing && 'board-drawing', zoom >= NAMES_FROM && 'board-names']
    .filter(Boolean)
    .join(' ');

/** Names grow less than the board when one looks closer. */
export const nameSize = (zoom: number): CSSProperties => ({ ['--shrink' as string]: String(zoom ** -0.4) });
