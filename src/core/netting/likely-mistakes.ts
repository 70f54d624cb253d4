import { NettingError } from './netting-error.ts';

/** One change of a netlist that would be right if it were drawn wrongly there. */
export interface Edit {
  /** Nets at which the mistake would be, the most telling first. */
  readonly nets: readonly string[];
  /** What each reading would be with it, on a scale where scatter is even: Infinity is OL, NaN is not known. */
  readonly predicted: ArrayLike<number>;
  /** How much likelier such a mistake is than another one, as a factor. */
  readonly weight: number;
}

export interface MistakeQuestion<E extends Edit> {
  /** What good boards read, on the same scale. */
  readonly readings: ArrayLike<number>;
  /** Standard deviation of each: boards, meter and tolerances. */
  readonly spreads: ArrayLike<number>;
  /** What the netlist as it is drawn predicts. */
  readonly asDrawn: ArrayLike<number>;
  readonly edits: readonly E[];
}

export interface LikelyMistake<E extends Edit> {
  readonly edit: E;
  /** Logarithm of how much better all readings fit with it than as drawn. */
  readonly gain: number;
  /** Readings, by place, that fit with it and not as drawn; and the other way round. */
  readonly explains: readonly number[];
  readonly spoils: readonly number[];
}

export interface SuspectNet<E extends Edit> {
  readonly net: string;
  /** Chance that the mistake is there, if there is just one and it is among the edits. */
  readonly chance: number;
  readonly best: LikelyMistake<E>;
}

/** A reading further off than so many spreads is odd; beyond `GROSS` more does not count more, for then the reading itself may be the mistake. */
const ODD = 4;
const GROSS = 6;
/** An edit has to explain something: less gain than this is none. */
const LEAST_GAIN = 2;

/** Spreads between a reading and what is predicted of it; 0 where that is not known, infinite where one of the two is OL. */
export function oddness(reading: number, predicted: number, spread: number): number {
  if (Number.isNaN(predicted) || Number.isNaN(reading)) return 0;
  if (reading === Infinity || predicted === Infinity) return reading === predicted ? 0 : Infinity;
  return Math.abs(reading - predicted) / spread;
}

/** Half the square of the oddness, which grows no more beyond `GROSS` spreads: the logarithm of a likelihood with a floor. */
const loss = (z: number): number => Math.min(z, GROSS) ** 2 / 2;

/** Places of the readings that the netlist does not predict, the oddest first. */
export function oddReadings({ readings, spreads, asDrawn }: Omit<MistakeQuestion<Edit>, 'edits'>): number[] {
  checkShape(readings, spreads, asDrawn);
  const z = Array.from(readings, (reading, p) => oddness(reading, asDrawn[p]!, spreads[p]!));
  return [...z.keys()].filter((p) => z[p]! > ODD).sort((a, b) => z[b]! - z[a]! || a - b);
}

/**
 * The edits that explain the readings of good boards better than the netlist as drawn, the best first, and the nets at which they are by the chance that the one
 * mistake is there: the sum over the edits of a net, each by its likelihood with its weight before. Throws NettingError where lists differ in length.
 */
export function likelyMistakes<E extends Edit>(
  question: MistakeQuestion<E>,
): {
  readonly edits: readonly LikelyMistake<E>[];
  readonly nets: readonly SuspectNet<E>[];
} {
  const { readings, spreads, asDrawn } = question;
  checkShape(readings, spreads, asDrawn, ...question.edits.map(({ predicted }) => predicted));
  const before = Array.from(readings, (reading, p) => oddness(reading, asDrawn[p]!, spreads[p]!));
  const edits = question.edits
    .map((edit) => weigh(edit, question, before))
    .filter(({ gain }) => gain >= LEAST_GAIN)
    .sort((a, b) => b.gain - a.gain);
  return { edits, nets: suspects(edits) };
}

function weigh<E extends Edit>(edit: E, { readings, spreads }: MistakeQuestion<E>, before: readonly number[]): LikelyMistake<E> {
  let gain = Math.log(edit.weight);
  const [explains, spoils]: [number[], number[]] = [[], []];
  before.forEach((was, p) => {
    const is = oddness(readings[p]!, edit.predicted[p]!, spreads[p]!);
    gain += loss(was) - loss(is);
    if (was > ODD && is <= ODD) explains.push(p);
    if (was <= ODD && is > ODD) spoils.push(p);
  });
  return { edit, gain, explains, spoils };
}

function suspects<E extends Edit>(edits: readonly LikelyMistake<E>[]): SuspectNet<E>[] {
  const most = edits[0]?.gain ?? 0;
  const all = edits.reduce((sum, { gain }) => sum + Math.exp(gain - most), 0);
  const found = new Map<string, { best: LikelyMistake<E>; sum: number }>();
  for (const mistake of edits)
    for (const net of new Set(mistake.edit.nets)) {
      const known = found.get(net) ?? { best: mistake, sum: 0 };
      known.sum += Math.exp(mistake.gain - most);
      found.set(net, known);
    }
  return [...found]
    .map(([net, { best, sum }]) => ({ net, chance: sum / all, best }))
    .sort((a, b) => b.chance - a.chance || b.best.gain - a.best.gain);
}

function checkShape(readings: ArrayLike<number>, ...others: ArrayLike<number>[]): void {
  const bad = others.find(({ length }) => length !== readings.length);
  if (bad) throw new NettingError('shape', `there are ${readings.length} readings and a list of ${bad.length} beside them`);
}
