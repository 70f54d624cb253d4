import { assertPositive } from '../rework-error.ts';
import { awgDiameter, sectionOf, wireResistance } from './awg.ts';
import { preeceFusing } from './fusing.ts';

export interface WireWish {
  /** The worst current of the net, A, and its longest way as a wire, m. */
  readonly currentA: number;
  readonly lengthM: number;
  /** What may be lost on the wire, V. */
  readonly dropV: number;
  /** What the wire gets warm to, °C. */
  readonly celsius?: number;
}

export interface WireChoice {
  readonly awg: number;
  readonly diameterM: number;
  readonly sectionM2: number;
  readonly ohms: number;
  readonly dropV: number;
  /** A on each square millimetre. */
  readonly ampsPerMm2: number;
  /** How many times the current melts it (Preece). */
  readonly fusingMargin: number;
  /** What kept a thinner one from being chosen. */
  readonly because: 'drop' | 'density' | 'thinnest';
}

/** Bundled or insulated thin wire stays cool below so many A/mm². Common practice, no source. */
const MOST_AMPS_PER_MM2 = 6;
const THINNEST = 40;
const THICKEST = 18;

/** The thinnest wire of AWG 18 to 40 that loses no more than allowed and stays cool; null when none of them does. */
export function wireFor(wish: WireWish): WireChoice | null {
  assertPositive({ currentA: wish.currentA, lengthM: wish.lengthM, dropV: wish.dropV });
  let because: WireChoice['because'] = 'thinnest';
  for (let awg = THINNEST; awg >= THICKEST; awg--) {
    const choice = choiceOf(awg, wish, because);
    if (choice.dropV > wish.dropV) because = 'drop';
    else if (choice.ampsPerMm2 > MOST_AMPS_PER_MM2) because = 'density';
    else return choice;
  }
  return null;
}

function choiceOf(awg: number, { currentA, lengthM, celsius = 60 }: WireWish, because: WireChoice['because']): WireChoice {
  const diameterM = awgDiameter(awg);
  const ohms = wireResistance(diameterM, lengthM, celsius).value;
  return {
    awg,
    diameterM,
    sectionM2: sectionOf(diameterM),
    ohms,
    dropV: ohms * currentA,
    ampsPerMm2: currentA / (sectionOf(diameterM) * 1e6),
    fusingMargin: preeceFusing(diameterM).value / currentA,
    because,
  };
}
