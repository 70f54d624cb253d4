import type { KeptPhoto } from '../grow/photo-desk.tsx';
import type { Side } from '../grow/editor-part.ts';
import { boardSize, frontFrame, type PhotoMarks } from '../grow/photo-frame.ts';
import type { Spot } from '../fit/photo-marks.ts';
import type { Draft, Gesture } from './gesture.ts';

const pair = ({ x, y }: Spot): [number, number] => [x, y];
/** The size of a board that is known is kept while the photo says the same within this share. */
const SAME_SIZE = 0.01;
const TENTHS = 10;
const toTenth = (mm: number): number => Math.round(mm * TENTHS) / TENTHS;

export interface BoardMm {
  readonly width_mm: number;
  readonly height_mm: number;
}

const isAlike = (a: BoardMm, b: BoardMm): boolean =>
  Math.abs(a.width_mm / b.width_mm - 1) <= SAME_SIZE && Math.abs(a.height_mm / b.height_mm - 1) <= SAME_SIZE;

/** The photo of one side of a board, and how it lies; with the front comes the size of the board, unless the model has it. */
export function setBoardPhoto(modelId: string, side: Side, { hash, marks }: KeptPhoto, board: BoardMm | null): Gesture {
  const drafts: Draft[] = [{ kind: 'model-photo-set', body: { model_id: modelId, side, photo: hash, ...(marks && marksBody(marks)) } }];
  const lies = marks && side === 'front' ? frontFrame(marks) : null;
  if (marks && lies) {
    const { width, height } = boardSize(lies, marks);
    const value = { width_mm: toTenth(width), height_mm: toTenth(height) };
    if (!board || !isAlike(board, value))
      drafts.push({ kind: 'model-fact-set', body: { model_id: modelId, section: 'head', id: 'board', value, source: 'measured' } });
  }
  return { said: `photo of the ${side}`, drafts };
}

const marksBody = ({ size, scale, corners, pairs }: PhotoMarks) => ({
  size: [...size] as [number, number],
  ...(scale ? { scale: { from: pair(scale.from), to: pair(scale.to), mm: scale.mm } } : {}),
  corners: corners.map(pair),
  mirror: pairs.map(({ front, back }) => ({ front: pair(front), back: pair(back) })),
});
