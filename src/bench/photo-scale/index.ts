export { distanceMarks, knownMarks, type KnownMark } from './known-marks.ts';
export { layingSaid, layingTrouble, lengthWords, measuredNote } from './laying-words.ts';
