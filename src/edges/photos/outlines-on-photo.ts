import type { OutlineQuestion, PhotoOutlines } from '../../bench/ports.ts';
import { proposeOutlines, referencesBeside, type Patch, type Point, type ProposedOutline } from '../../core/vision/index.ts';
import { readWords } from './read-words.ts';
import { decodePhoto, UndecodedPhoto } from './decode-photo.ts';

/** Longer side, px, at which photos are looked at: the memory that a search takes goes with its square. */
const LONGEST_PX = 4000;

/** Outlines on a photo as it is kept (bytes of JPEG, PNG or WebP), in px of the upright photo. One that cannot be decoded is an answer, not an exception. */
export async function outlinesOnPhoto(bytes: Uint8Array, question: OutlineQuestion): Promise<PhotoOutlines> {
  try {
    const { pixels, size } = await decodePhoto(bytes, LONGEST_PX);
    const pxPerMm = question.pxPerMm / size.toOriginal;
    const board = question.board
      ? patchTimes(question.board, 1 / size.toOriginal)
      : { left: 0, top: 0, right: pixels.width, bottom: pixels.height };
    const { leastChance, readsText = false } = question;
    const answer = proposeOutlines(pixels, pxPerMm, { board, ...(leastChance !== undefined && { leastChance }) });
    if (!answer.ok) return answer;
    const words = readsText ? await readWords(pixels, board, pxPerMm) : [];
    const references = referencesBeside(answer.outlines, words, pxPerMm);
    return {
      ok: true,
      outlines: answer.outlines.map((outline, k) => ({ ...outlineTimes(outline, size.toOriginal), reference: references[k]! })),
    };
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
