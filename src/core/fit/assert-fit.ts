import { LIMITS, type FitAnswer } from './answer.ts';
import { FitError } from './fit-error.ts';
import type { Pattern } from './pattern.ts';
import { seated, shared, worked } from './seat.ts';

const CLOSE = 1e-6;

/**
 * The law of a fit, for tests and before it is shown: throws `FitError` (`unsound-fit`) with what is broken. Each land of the part is answered once; overlaps are shares and
 * are found again when the part is laid down as the answer says; the answer follows from its reasons, what is asked and the bending.
 */
export function assertFit(part: Pattern, place: Pattern, fit: FitAnswer): void {
  const [broken] = [...answerLaws(fit), ...seatLaws(part, place, fit)];
  if (broken !== undefined) throw new FitError('unsound-fit', broken);
}

function answerLaws({ answer, reasons, asks, bendMm, pads, holes, placing }: FitAnswer): string[] {
  const broken: string[] = [];
  const numbers = [...Object.values(placing), bendMm, ...pads.flatMap((pad) => [pad.overlap, pad.bendMm, ...pad.offMm])];
  if (numbers.some((n) => !Number.isFinite(n))) broken.push('a number of the answer is not finite');
  if (pads.some(({ overlap }) => overlap < 0 || overlap > 1)) broken.push('an overlap is not a share');
  if ([...pads, ...holes].some((each) => each.bendMm < 0) || bendMm < 0) broken.push('a bending is below zero');
  if (pads.length > 0 && (answer === 'does-not-line-up') !== reasons.length > 0)
    broken.push('it lines up exactly when there is no reason against it');
  const decides = asks.some((ask) => ask.decides);
  if (answer.startsWith('fits') && (reasons.length > 0 || decides)) broken.push('it is said to fit although something is open');
  if ((answer === 'fits-after-bending') !== bendMm > LIMITS.noBendMm) broken.push('bending is told exactly when it fits after bending');
  return broken;
}

function seatLaws(part: Pattern, place: Pattern, fit: FitAnswer): string[] {
  const broken: string[] = [];
  const seat = seated(worked(part), fit.placing).lands;
  const below = worked(place).lands;
  if (fit.pads.length > 0 && fit.pads.length !== seat.length) broken.push('not every land of the part is answered once');
  fit.pads.forEach((pad, i) => {
    const land = seat[i];
    if (!land || land.names.join() !== pad.pins.join()) return void broken.push(`the pins ${pad.pins.join()} are not those of the land`);
    const area = below.reduce((sum, each) => sum + (each.names.some((name) => pad.onto.includes(name)) ? shared(land, each) : 0), 0);
    if (pad.overlap * land.areaMm2 > area + CLOSE && part.basis === 'feet')
      broken.push(`pin ${pad.pins.join()} is told to cover more than it does`);
    if (pad.overlap > 0 && area === 0) broken.push(`pin ${pad.pins.join()} is told to lie on pads that it does not touch`);
  });
  const used = new Set(fit.pads.flatMap(({ onto }) => onto));
  if (fit.unused.some((name) => used.has(name))) broken.push('a pad is told to be used and unused');
  return broken;
}
