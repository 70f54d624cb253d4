import { minutesCost, openedTo, openingMinutes } from '../getting-there.ts';
import type { Remedy, Stakes } from '../model.ts';
import type { Baseline } from './evidence.ts';
import { mendingOf, quickRow, worthByRow, type Mending } from './mending.ts';
import { OutcomeShares, type OutcomeVisit } from './outcome-shares.ts';
import type { OutcomeBands } from './outcome-bands.ts';
import type { ReadingBelief } from './reading-belief.ts';
import type { ReadingPoint } from './reading-dictionary.ts';

/** Where the work stands: what is up, what is powered how, and what the meter is set to. */
export interface BenchState {
  readonly side: 'front' | 'back';
  readonly power: string;
  readonly mode: ReadingPoint['mode'];
}

/** Minutes to change something before a reading; common practice, no source. */
export const CHANGE_MINUTES = { side: 0.5, power: 0.75, mode: 0.1 } as const;

export interface ReadingChoice {
  readonly belief: ReadingBelief;
  readonly baseline: Baseline;
  readonly bands: OutcomeBands;
  readonly remedies: readonly Remedy[];
  readonly stakes: Stakes;
  readonly bench: BenchState;
  /** Points that are not asked for: read already, or declined. */
  readonly skip?: ReadonlySet<string>;
}

/** A range of readings that would mean the same, V, Ω or A; OL is a range of its own. */
export interface ReadingOutcome {
  readonly from: number;
  readonly to: number;
  readonly chance: number;
  /** The likeliest faults after it; an empty name is "nothing is wrong". */
  readonly faults: readonly { readonly fault: string; readonly chance: number }[];
}

export interface RankedReading {
  readonly point: ReadingPoint;
  readonly minutes: number;
  /** What knowing the reading is expected to save on the way to a working or abandoned unit; its minutes are not paid yet. */
  readonly savingMinor: number;
  readonly savingPerMinuteMinor: number;
  readonly bits: number;
  /** Whether it saves more than its minutes cost. */
  readonly pays: boolean;
  readonly outcomes: readonly ReadingOutcome[];
}

export interface NextReadings {
  readonly ranked: readonly RankedReading[];
  /** True when acting now is worth more than any reading. */
  readonly act: boolean;
  /** What the best order of remedies is expected to bring now. */
  readonly actMinor: number;
}

/** So many points with the most information per minute are weighed in money. */
const WEIGHED = 12;
const TOLD = 4;

/**
 * Where to put the probe next: by saving per minute of those that pay for themselves, then by bits per minute. One step ahead. Money is worked out for the points that tell most
 * per minute, with a pair of faults shared between the two; the best `limit` of them come out.
 */
export function nextReadings(choice: ReadingChoice, limit = 5): NextReadings {
  const desk = new Desk(choice);
  const { points } = choice.baseline.kernels.dictionary;
  const asked = [...points.keys()].filter((p) => !choice.skip?.has(points[p]!.id));
  const told = asked.map((p) => desk.inform(p)).sort((a, b) => b.bits / b.minutes - a.bits / a.minutes);
  const weighed = told
    .slice(0, WEIGHED)
    .map((each) => desk.weigh(each))
    .sort(byWorth);
  return {
    ranked: weighed.slice(0, limit),
    act: !weighed.some(({ pays }) => pays),
    actMinor: desk.actMinor,
  };
}

interface Informed {
  readonly p: number;
  readonly minutes: number;
  readonly bits: number;
}

type Weighed = Informed & RankedReading;

function byWorth(a: Weighed, b: Weighed): number {
  if (a.pays !== b.pays) return a.pays ? -1 : 1;
  const money = b.savingPerMinuteMinor - a.savingPerMinuteMinor;
  return a.pays && Math.abs(money) > 1e-6 ? money : b.bits / b.minutes - a.bits / a.minutes;
}

/** What a belief makes of its readings to come, in bits and in money, against the order of remedies that it would follow now. */
export class Desk {
  readonly actMinor: number;
  private readonly mending: Mending;
  private readonly shares: OutcomeShares;
  private readonly worth: Float64Array;

  constructor(private readonly choice: ReadingChoice) {
    const { belief, baseline, bands, remedies, stakes } = choice;
    this.mending = mendingOf(baseline.kernels.dictionary.faults, remedies);
    this.shares = new OutcomeShares(belief.weights, baseline.kernels, bands);
    const row = quickRow(this.mending, this.shares.chances, stakes);
    this.actMinor = row.expectedMinor;
    this.worth = worthByRow(this.mending, row.steps, baseline.kernels.rows, stakes);
  }

  inform(p: number): Informed {
    return { p, minutes: this.minutes(this.choice.baseline.kernels.dictionary.points[p]!), bits: this.shares.bits(p) };
  }

  private minutes(point: ReadingPoint): number {
    const { bench, stakes } = this.choice;
    const turn = point.side !== 'both' && point.side !== bench.side ? CHANGE_MINUTES.side : 0;
    const power = point.power !== bench.power ? CHANGE_MINUTES.power : 0;
    const mode = point.mode !== bench.mode ? CHANGE_MINUTES.mode : 0;
    return Math.max(0.1, point.minutes + turn + power + mode + openingMinutes(stakes, point.stage));
  }

  weigh({ p, minutes, bits }: Informed): Weighed {
    const { points, faults } = this.choice.baseline.kernels.dictionary;
    const outcomes: ReadingOutcome[] = [];
    const savingMinor = this.saving(p, this.shares, (chance, after, [from, to]) => {
      const named = likeliest(after).map((row) => ({ fault: row === 0 ? '' : faults[row - 1]!.id, chance: after[row]! }));
      outcomes.push({ from, to, chance, faults: named });
    });
    const pays = savingMinor > minutesCost(this.choice.stakes, minutes);
    return { p, point: points[p]!, minutes, bits, savingMinor, savingPerMinuteMinor: savingMinor / minutes, pays, outcomes };
  }

  /** Expected saving of a reading whose outcomes are shared so, over following the order of now; each outcome is shown to `visit` too. */
  saving(p: number, shares: OutcomeShares, visit: OutcomeVisit = () => undefined): number {
    const stakes = openedTo(this.choice.stakes, this.choice.baseline.kernels.dictionary.points[p]!.stage);
    let saving = 0;
    shares.each(p, (chance, after, range) => {
      saving += chance * this.gain(after, stakes);
      visit(chance, after, range);
    });
    return saving;
  }

  /** How much more a new order of remedies brings than that of now. */
  private gain(after: Float64Array, stakes: Stakes): number {
    let [follow, rest] = [0, 1];
    for (let row = 0; row < after.length; row++) {
      follow += after[row]! * this.worth[row]!;
      rest -= after[row]!;
    }
    follow += Math.max(0, rest) * this.worth[after.length]!;
    return Math.max(0, quickRow(this.mending, after, stakes).expectedMinor - follow);
  }
}

/** The likeliest rows above a hundredth, in order. */
function likeliest(chances: Float64Array): number[] {
  const rows: number[] = [];
  for (let row = 0; row < chances.length; row++) if (chances[row]! > 0.01) rows.push(row);
  return rows.sort((a, b) => chances[b]! - chances[a]!).slice(0, TOLD);
}
