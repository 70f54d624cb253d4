import { METER_SCALES } from '../meter-scale.ts';
import type { Behaviour } from '../model.ts';
import { DiagnosisError } from '../posterior-over-sets.ts';
import type { Baseline, ReadingEvidence } from './evidence.ts';
import { meterSpread, type Kernels } from './kernels.ts';

/** Share of readings and trials that say nothing about the unit. */
export const LEAK = 0.03;
/** Share of readings that a trouble outside the model disturbs. */
const UNKNOWN_LEAK = 0.3;
/** Chance of OL of a reading that says nothing, where the meter can show it. */
const LEAK_OL = 0.15;
/**
 * What the circuit as written leaves out, on the scale of each mode: leads and contacts, warmth, the batch that a part is of. Five kelvin alone move a junction
 * by 10 mV. Common practice, no source.
 */
const ROUGH = { volts: 0.007, ohms: 0.014, diode: 0.01, amps: 0.02 } as const;
const ROOT_TAU = Math.sqrt(2 * Math.PI);

/** Likelihoods of one piece of evidence: by row and draw, and by draw for something that is not in the model. */
export interface Likelihood {
  readonly id: string;
  readonly rows: Float64Array;
  readonly unknown: Float64Array;
  /** What it would be if it said nothing: its share in each likelihood is the chance that it is a slip. */
  readonly slip: number;
  /** Index of the point of a reading. */
  readonly point?: number;
  readonly value?: number | null;
  readonly function?: string;
}

/** Throws DiagnosisError for a point or function that the baseline lacks. */
export function likelihoodOf(baseline: Baseline, evidence: ReadingEvidence): Likelihood {
  return evidence.kind === 'reading'
    ? ofReading(baseline.kernels, evidence.id, pointIndex(baseline.kernels, evidence.point), evidence.value)
    : ofFunction(baseline, evidence);
}

export function pointIndex({ dictionary }: Kernels, id: string): number {
  const index = dictionary.points.findIndex((point) => point.id === id);
  if (index < 0) throw new DiagnosisError('unknown-name', `the circuit has no point "${id}"`);
  return index;
}

/** Density of a reading that says nothing; OL has a chance. */
export function slipDensity({ dictionary }: Kernels, p: number, value: number | null): number {
  const { of, top, hasOl } = METER_SCALES[dictionary.points[p]!.mode];
  const ol = hasOl ? LEAK_OL : 0.01;
  return value === null ? ol : (1 - ol) / (of(top) - of(0));
}

/** Density of a reading under one kernel, without slips. */
export class KernelDensity {
  private readonly x: number;
  private readonly meter2: number;

  constructor(
    private readonly kernels: Kernels,
    readonly p: number,
    readonly value: number | null,
  ) {
    const { mode } = kernels.dictionary.points[p]!;
    const scale = METER_SCALES[mode];
    this.x = value === null ? 0 : scale.of(value);
    this.meter2 = value === null ? 0 : meterSpread(kernels, p, value) ** 2 + ROUGH[mode] ** 2;
  }

  at(centre: number, width: number, ol: number): number {
    if (this.value === null) return ol;
    if (Number.isNaN(centre)) return 0;
    const variance = width * width + this.meter2;
    const off = this.x - centre;
    return ((1 - ol) * Math.exp((-0.5 * off * off) / variance)) / (ROOT_TAU * Math.sqrt(variance));
  }
}

function ofReading(kernels: Kernels, id: string, p: number, value: number | null): Likelihood {
  const { dictionary, rows, centre, width, ol, known } = kernels;
  const { draws } = dictionary;
  const density = new KernelDensity(kernels, p, value);
  const slip = slipDensity(kernels, p, value);
  const result = new Float64Array(rows * draws);
  const unknown = new Float64Array(draws);
  for (let row = 0; row < rows; row++) {
    const w = width[p * rows + row]!;
    for (let d = 0; d < draws; d++) {
      const at = (p * rows + row) * draws + d;
      const first = p * rows * draws + d;
      // Most faults leave most points alone: there the row is the healthy one, number for number.
      if (row > 0 && centre[at] === centre[first] && ol[at] === ol[first] && w === width[p * rows]) {
        result[row * draws + d] = result[d]!;
        continue;
      }
      const own = density.at(centre[at]!, w, ol[at]!);
      if (row === 0) unknown[d] = (1 - UNKNOWN_LEAK) * own + UNKNOWN_LEAK * slip;
      result[row * draws + d] = known[row] ? (1 - LEAK) * own + LEAK * slip : unknown[d]!;
    }
  }
  return { id, rows: result, unknown, slip: LEAK * slip, point: p, value };
}

/** How an unknown trouble, or a circuit that is not simulated yet, shows in a function. */
const UNKNOWN_WORKS = 0.5;
/** Of what does not work, so much works now and then. */
const SOMETIMES = 0.15;

function ofFunction({ kernels, functions }: Baseline, evidence: ReadingEvidence & { kind: 'function' }): Likelihood {
  const works = functions.get(evidence.function);
  if (!works) throw new DiagnosisError('unknown-name', `the circuit does not tell of a function "${evidence.function}"`);
  const law = trialLaw(evidence);
  const rows = new Float64Array(works.length);
  for (let i = 0; i < rows.length; i++) rows[i] = law.at(works[i]!);
  const unknown = new Float64Array(kernels.dictionary.draws).fill(law.at(NaN));
  return { id: evidence.id, rows, unknown, slip: law.slip, function: evidence.function };
}

/** How likely an outcome of a trial is by the chance that the function works, in which it is linear: a claim may be a guess among the three outcomes. */
export class TrialLaw {
  private readonly atNone: number;
  private readonly slope: number;
  readonly slip: number;

  constructor(outcome: Behaviour, honesty: number) {
    const of = (works: number): number => honesty * outcomeChance(outcome, works) + (1 - honesty) / 3;
    this.atNone = of(0);
    this.slope = of(1) - this.atNone;
    this.slip = (honesty * LEAK) / 3 + (1 - honesty) / 3;
  }

  /** NaN is not known. */
  at(works: number): number {
    return this.atNone + this.slope * (works === works ? works : UNKNOWN_WORKS);
  }
}

export const trialLaw = ({ outcome, honesty = 1 }: ReadingEvidence & { kind: 'function' }): TrialLaw => new TrialLaw(outcome, honesty);

/** Chance of an outcome of a trial when it works with this chance. Slips are included. */
function outcomeChance(outcome: Behaviour, works: number): number {
  const own = outcome === 'works' ? works : outcome === 'fails' ? (1 - works) * (1 - SOMETIMES) : (1 - works) * SOMETIMES;
  return (1 - LEAK) * own + LEAK / 3;
}
