import type { OutlineQuestion, PhotoOutlines } from '../../bench/ports.ts';
import { proposeOutlines, type Patch, type Point, type ProposedOutline } from '../../core/vision/index.ts';
import { decodePhoto, UndecodedPhoto } from './decode-photo.ts';

/** Longer side, px, at which photos are looked at: the memory that a search takes goes with its square. */
const LONGEST_PX = 4000;

/** Outlines on a photo as it is kept (bytes of JPEG, PNG or WebP), in px of the upright photo. One that cannot be decoded is an answer, not an exception. */
export async function outlinesOnPhoto(bytes: Uint8Array, { pxPerMm, board, leastChance }: OutlineQuestion): Promise<PhotoOutlines> {
  try {
    const { pixels, size } = await decodePhoto(bytes, LONGEST_PX);
    const answer = proposeOutlines(pixels, pxPerMm / size.toOriginal, {
      ...(board && { board: patchTimes(board, 1 / size.toOriginal) }),
      ...(leastChance !== undefined && { leastChance }),
    });
    return answer.ok ? { ok: true, outlines: answer.outlines.map((outline) => outlineTimes(outline, size.toOriginal)) } : answer;
  } catch (error) {
    if (!(error instanceof UndecodedPhoto)) throw error;
    return { ok: false, code: 'photo-corrupt', detail: error.message };
  }
}

const patchTimes = ({ left, top, right, bottom }: Patch, times: number): Patch => ({
  left: left * times,
  top: top * times,
  right: right * times,
  bottom: bottom * times,
});

function outlineTimes({ kind, chance, box, outline, rows }: ProposedOutline, times: number): ProposedOutline {
  const point = ([x, y]: Point): Point => [x * times, y * times];
  const [a, b, c, d] = outline;
  return {
    kind,
    chance,
    box: patchTimes(box, times),
    outline: [point(a), point(b), point(c), point(d)],
    rows: rows.map((row) => row.map(point)),
  };
}
