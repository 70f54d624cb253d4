import type { DifferenceKind, PhotoTrouble, Pose } from '../../core/vision/index.ts';
import type { BoardSide, FindingKind } from '../events/index.ts';
import type { Problem } from '../views/index.ts';
import type { CompareRefusal } from './comparer.ts';

export const SIDE_NAMES: Readonly<Record<BoardSide, string>> = { 'board-front': 'front of the board', 'board-back': 'back of the board' };

/** What a difference looks like, in plain words. */
export const DIFFERENCE_WORDS: Readonly<Record<DifferenceKind, string>> = {
  missing: 'something is missing',
  added: 'something is there that should not be',
  moved: 'moved or tilted',
  stain: 'stain, residue or corrosion',
  damaged: 'track or mask damaged',
};

/** What a difference may turn out to be on a closer look, the likeliest first. */
export const FINDINGS_OF: Readonly<Record<DifferenceKind, readonly FindingKind[]>> = {
  missing: ['missing', 'moved', 'burnt'],
  added: ['bridged', 'residue', 'opened-before'],
  moved: ['moved', 'loose', 'dry-joint'],
  stain: ['residue', 'corrosion', 'dirty', 'burnt'],
  damaged: ['track-damaged', 'cracked', 'burnt'],
};

/** Leans below this are within what a comparison takes, degrees. */
export const FREE_LEAN_DEG = 4;
/** A board that is turned further is worth a word, degrees. */
const FREE_TURN_DEG = 20;

/** How to hold the camera next time, so that it stands as for the reference; empty where it did. */
export function poseAdvice({ tiltRightDeg, tiltDownDeg, turnDeg, scale }: Pose): string[] {
  const round = (deg: number): string => `${Math.round(Math.abs(deg))}°`;
  const advice: string[] = [];
  if (Math.abs(tiltRightDeg) > FREE_LEAN_DEG)
    advice.push(
      `tip the camera about ${round(tiltRightDeg)} so that its ${tiltRightDeg > 0 ? 'right' : 'left'} edge comes nearer to the board`,
    );
  if (Math.abs(tiltDownDeg) > FREE_LEAN_DEG)
    advice.push(
      `tip the camera about ${round(tiltDownDeg)} so that its ${tiltDownDeg > 0 ? 'lower' : 'upper'} edge comes nearer to the board`,
    );
  if (Math.abs(turnDeg) > FREE_TURN_DEG)
    advice.push(`turn the board about ${round(turnDeg)} ${turnDeg > 0 ? 'with' : 'against'} the clock`);
  if (scale < 0.6) advice.push('go nearer, so that the board fills the picture');
  return advice;
}

/** What is wrong with a photo, and what to do about it. */
export const TROUBLE_WORDS: Readonly<Record<PhotoTrouble, string>> = {
  blurred: 'It is blurred: rest the hands or the phone on something, tap the board on the screen to focus, and take it again.',
  'too-dark': 'It is too dark: take it by daylight or with a second lamp from the other side.',
  'too-bright': 'It is too bright: move the lamp away or tap the brightest place on the screen, and take it again.',
  glare: 'Something shines: move the lamp to the side, or hold paper in front of it, and take it again.',
};

/** Why two photos could not be compared, and what to do next. */
const REFUSALS: Readonly<Record<CompareRefusal['code'], string>> = {
  'no-structure': 'One of the photos shows hardly anything. Take it again in better light, with the board filling the picture.',
  'too-different':
    'The photos do not look like the same board. Check that both show the same side and the same revision; then take the photo again, square on, with the board filling the picture.',
  'opposite-sides':
    'The two photos show opposite sides of the board. Turn the board over and take the photo again, or choose the other side.',
  repetitive:
    'The board could lie on the reference in more than one way. Turn it as it lies on the reference, take the whole board with its printing into the picture, and try again.',
  'too-little-shared': 'Too little of the board is on both photos. Take the whole board into the picture.',
  'too-oblique': 'The board leans too far. Hold the camera straight above it and take the photo again.',
  stopped: 'The comparison was stopped. Start it again when you like.',
  'photo-corrupt': 'A photo cannot be decoded. Take it again, or choose another.',
};

/** The refusal of a comparison as a problem with a sentence. */
export function problemOfComparison(refusal: CompareRefusal): Problem {
  const lean = refusal.code === 'too-oblique' && refusal.tiltDeg !== undefined ? ` It leans by about ${Math.round(refusal.tiltDeg)}°.` : '';
  return { code: refusal.code, message: `${REFUSALS[refusal.code]}${lean}` };
}
