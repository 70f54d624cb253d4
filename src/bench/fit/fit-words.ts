import type { Ask, FitAnswer, Reason } from '../../core/fit/index.ts';

const mm = (value: number): string => `${Math.round(Math.abs(value) * 100) / 100} mm`;
const list = (names: readonly string[]): string =>
  names.length > 8 ? `${names.slice(0, 8).join(', ')} and ${names.length - 8} more` : names.join(', ');
const OF = { part: 'of the part', place: 'of the place', both: 'of both' } as const;
const named = (kind: string, name: string): string => (name === '' ? `a ${kind}` : `${kind} ${name}`);

/** The answer in one sentence. */
export function fitSentence(fit: FitAnswer): string {
  if (fit.answer === 'fits') return 'It fits.';
  if (fit.answer === 'fits-after-bending') return `It fits after bending by up to ${mm(fit.bendMm)}.`;
  if (fit.answer === 'does-not-line-up') return 'It does not line up.';
  return 'It cannot be said yet: measure first.';
}

/** Why it does not line up, as a sentence. */
export function reasonSentence(reason: Reason): string {
  switch (reason.code) {
    case 'no-pads':
      return `There are no pads with a pin ${OF[reason.of]}. Give its pads first.`;
    case 'pin-without-pad':
      return `Pins ${list(reason.pins)} have no pad.`;
    case 'other-pitch':
      return `The part has its pins ${mm(reason.partMm)} apart, the place ${mm(reason.placeMm)}.`;
    case 'pad-off':
      return `Pin ${list(reason.pins)} misses its pad by ${mm(reason.byMm)}.`;
    case 'foot-too-large':
      return `The foot of pin ${list(reason.pins)} is larger than its pad.`;
    case 'touches-other':
      return `Pin ${list(reason.pins)} would also touch pad ${list(reason.onto)}.`;
    case 'pin-order':
      return `The shape agrees, but not the order of pins: ${list(reason.pairs.map(([part, place]) => `pin ${part} would lie on pad ${place}`))}.`;
    case 'other-side':
      return 'It would fit only from the other side of the board.';
    case 'other-use':
      return `Pins ${list(reason.pins)} are for something else on this part.`;
    case 'hole-missing':
      return `There is no hole for ${named(reason.kind, reason.name)}.`;
    case 'hole-off':
      return `The hole for ${named(reason.kind, reason.name)} is ${mm(reason.byMm)} off.`;
    case 'hole-too-small':
      return `The hole for ${named(reason.kind, reason.name)} is ${mm(reason.byMm)} smaller than the part asks for.`;
    case 'too-high':
      return `It is ${mm(reason.byMm)} too high for the room there.`;
    case 'mouth-turned':
      return `Its mouth faces another way, by ${Math.round(reason.byDeg)}°.`;
    case 'mouth-off':
      return `Its mouth would sit ${mm(reason.byMm)} ${reason.byMm > 0 ? 'too far out' : 'too far in'}.`;
    case 'contacts-other-side':
      return 'It touches the ribbon on the other side.';
  }
}

/** What to measure or look at, as a sentence. */
export function askSentence(ask: Ask): string {
  switch (ask.code) {
    case 'feet':
      return `Measure where the feet of pins ${list(ask.pins)} begin and end: their lands cover each other only in part (${mm(ask.byMm)} short).`;
    case 'peg':
      return `Measure the pegs of the part: the hole takes at most ${mm(ask.mostMm)}.`;
    case 'leg':
      return `Measure leg ${ask.name} of the part: the hole takes at most ${mm(ask.mostMm)}.`;
    case 'pin-1':
      return 'Find pin 1 on the part and on the board: the pads alone do not show it.';
    case 'contacts':
      return `Look on which side the ribbon is touched, ${OF[ask.of]}: top or bottom.`;
    case 'height':
      return `Still to check: the height ${OF[ask.of]}.`;
    case 'mouth':
      return `Still to check: which way the mouth faces, ${OF[ask.of]}.`;
    case 'mouth-reach':
      return `Still to check: how far out the mouth is, ${OF[ask.of]}.`;
  }
}
