import type { Length, Measured, Registration, RegistrationRefusal } from '../../core/vision/index.ts';

/** Why marks do not lay a photo on its board, and what to do. */
export function layingTrouble(refusal: RegistrationRefusal): string {
  switch (refusal.code) {
    case 'too-few-marks':
      return 'Mark two places of the board at least; four and more count the lean of the camera in.';
    case 'marks-together':
      return `${refusal.names[0]} and ${refusal.names[1]} lie on one place. Take one of them away, and mark another that is farther off.`;
    case 'marks-in-line':
      return 'The marks lie in one line, so the board could lean either way. Mark one more place off that line.';
    case 'other-side':
      return 'The marks run round the other way: the photo shows the other side of the board, or two marks are swapped. Choose the other side, or mark them anew.';
    case 'too-slanted':
      return `By these marks one end of the board is seen ${refusal.times.toFixed(1)} times as large as the other. Two marks are swapped, or the photo is too slanted: mark them anew, or take the photo from straight above.`;
    case 'mark-does-not-fit':
      return `${refusal.name} lies ${mm(refusal.mm)} mm from where the others put it (up to ${mm(refusal.allowedMm)} mm is taken). Mark it anew, or take it away.`;
  }
}

/** How a photo lies on its board, and how far that can be believed. */
export function layingSaid({ kind, pxPerMm, spreadMm, residuals }: Registration): string {
  const scale = `${pxPerMm.toFixed(1)} px are a millimetre`;
  const lean = kind === 'similarity' ? 'taken as seen from straight above' : 'the lean of the camera counted in';
  const sure = spreadMm === null ? 'one more mark would check it' : `marks disagree by ${mm(spreadMm)} mm`;
  return `By ${residuals.length} marks ${scale}, ${lean}; ${sure}.`;
}

/** A measured stretch in words, with its standard error: "12.4 ± 0.2 mm". */
export function lengthWords({ mm: length, errorMm }: Length): string {
  const digits = errorMm < 0.095 ? 2 : 1;
  return `${length.toFixed(digits)} ± ${Math.max(errorMm, 10 ** -digits).toFixed(digits)} mm`;
}

/** What is noted of a measurement in the log of the unit. */
export function measuredNote({ apart, alongX, alongY, from, to }: Measured, what: string): string {
  const at = ([x, y]: readonly [number, number]): string => `(${x.toFixed(1)}, ${y.toFixed(1)})`;
  const name = what.trim() === '' ? 'Measured on a photo' : `${what.trim()}, measured on a photo`;
  return `${name}: ${lengthWords(apart)}, across ${lengthWords(alongX)}, down ${lengthWords(alongY)}, from ${at(from)} to ${at(to)} mm of the board.`;
}

const mm = (value: number): string => value.toFixed(value < 0.095 ? 2 : 1);
