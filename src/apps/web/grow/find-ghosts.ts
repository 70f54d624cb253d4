import { askOutlines, type OutlineAnswer, type OutlineQuestion } from '../api/ask-outlines.ts';
import { photoUrl } from '../api/post-photos.ts';
import type { Ghost } from './ghosts.ts';
import type { LaidPhoto } from './lay-photos.ts';
import { onBoard, onPhoto, type PhotoFrame } from './photo-frame.ts';

interface BoardMm {
  readonly width_mm: number;
  readonly height_mm: number;
}

/** What is asked of a photo that lies on its board; `ratio` is how many px of the photo as it came go on one of the picture that is shown. */
export function outlineQuestion(
  { lies }: Pick<LaidPhoto, 'lies'>,
  { width_mm: width, height_mm: height }: BoardMm,
  ratio: number,
): OutlineQuestion {
  const corners = [0, width].flatMap((x) => [0, height].map((y) => onPhoto(lies, { x, y })));
  const [xs, ys] = [corners.map(({ x }) => ratio * x), corners.map(({ y }) => ratio * y)];
  return {
    px_per_mm: ratio / Math.hypot(lies.a.x, lies.a.y),
    board: { left_px: Math.min(...xs), top_px: Math.min(...ys), right_px: Math.max(...xs), bottom_px: Math.max(...ys) },
  };
}

/** Answers as ghosts on the board. */
export function ghostsOf(answers: readonly OutlineAnswer[], lies: PhotoFrame, ratio: number): Ghost[] {
  const place = ([x, y]: readonly [number, number]) => onBoard(lies, { x: x / ratio, y: y / ratio });
  return answers.map(({ kind, chance, reference, outline_px: outline, rows_px: rows }) => ({
    kind,
    chance,
    reference,
    side: lies.side,
    outline: outline.map(place),
    rows: rows.map((row) => row.map(place)),
  }));
}

/** What the photo of a side proposes. Rejects where the bench refuses, or the photo as it came cannot be shown here. */
export async function findGhosts(hash: string, laid: LaidPhoto, board: BoardMm): Promise<Ghost[]> {
  const original = new Image();
  original.src = photoUrl(hash, 'original');
  await original.decode();
  const ratio = original.naturalWidth / laid.photo.width;
  return ghostsOf(await askOutlines(hash, outlineQuestion(laid, board, ratio)), laid.lies, ratio);
}
