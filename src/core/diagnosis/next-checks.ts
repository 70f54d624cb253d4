import type { Belief } from './belief.ts';
import { answersSinceChange, outcomesOf, type Outcome } from './check-outcomes.ts';
import { minutesCost, openedTo, openingMinutes } from './getting-there.ts';
import type { Check, DeviceModel, Evidence, Stage, Stakes } from './model.ts';
import type { Observation } from './observation.ts';
import { meanOver, multiply } from './posterior-over-sets.ts';
import { bestRow, worthByState } from './repair-row.ts';
import { faultChances, type StateSpace } from './state-space.ts';
import { Workshop } from './workshop.ts';

export interface CheckOutcome {
  /** works, comes-and-goes, fails; a kind of finding; normal, low, high, near-zero, number, OL. */
  readonly outcome: string;
  readonly chance: number;
  /** Of a reading whose circuit is known: from where to where; infinite for no limit, and both for OL. */
  readonly range?: readonly [from: number, to: number];
  /** The likeliest sets after it. */
  readonly sets: readonly { readonly faults: readonly string[]; readonly chance: number }[];
  /** The faults whose chance it would move most. */
  readonly marginalShift: readonly { readonly fault: string; readonly from: number; readonly to: number }[];
}

export interface RankedCheck {
  readonly check: Check;
  /** Its own minutes and the way to get at it. */
  readonly minutes: number;
  /** How much more the best that can be done is expected to bring once the outcome is known; its minutes are not paid yet. */
  readonly savingMinor: number;
  readonly savingPerMinuteMinor: number;
  /** Expected information about the set of faults, bits. */
  readonly bits: number;
  readonly outcomes: readonly CheckOutcome[];
  /** True when the same check was answered since the last remedy or transplant: it tells little again. */
  readonly repeat: boolean;
}

/** An outcome less likely than this is not looked into. */
const LEAST_CHANCE = 1e-4;
const TOLD = 4;
/** Savings per minute closer than this are the same, and bits decide. */
const SAME_MINOR = 1e-6;

/**
 * Checks by worth per minute: the expected gain in money of the best that can be done, a plan of repair or giving up, from
 * knowing the outcome; bits per minute as tie-break. One step ahead. When the way to a check is one that the repair goes
 * anyway, what it then need not be paid for again counts for the check. `skip` leaves out what was declined.
 */
export function nextChecks(
  model: DeviceModel,
  belief: Belief,
  evidence: readonly Evidence[],
  stakes: Stakes,
  options: NextOptions = {},
): RankedCheck[] {
  const desk = new Desk(model, belief, stakes, options.readings);
  const answers = answersSinceChange(evidence);
  const asked = model.checks.filter(({ id }) => !options.skip?.has(id));
  const told = asked.map((check) => desk.inform(check, answers(check)));
  const worthIt = options.weighed === undefined ? told : told.sort((a, b) => bitRate(b) - bitRate(a)).slice(0, options.weighed);
  const weighed = worthIt.map((each) => desk.weigh(each)).sort(byWorth);
  return weighed.slice(0, options.limit ?? weighed.length).map((each) => desk.tell(each));
}

export interface NextOptions {
  /** Checks that were declined. */
  readonly skip?: ReadonlySet<string>;
  readonly limit?: number;
  /** Where there are many checks, only so many that tell most per minute are weighed in money; the others are left out. */
  readonly weighed?: number;
  readonly readings?: ReadingsAhead;
}

/** How readings that are still to be taken come out, where a circuit tells. */
export interface ReadingsAhead {
  /** Outcomes of measuring a point, their chances summing to 1; undefined where the circuit does not tell, or the point was read already. */
  outcomesAt(point: string): readonly Outcome[] | undefined;
  /** Minutes to take it with what has to be changed for it, the way to it apart; undefined as before. */
  minutesAt(point: string): number | undefined;
}

/** Whether a check is worth its own minutes. */
export const paysForItself = (ranked: RankedCheck, stakes: Stakes): boolean => ranked.savingMinor > minutesCost(stakes, ranked.minutes);

interface Possible {
  readonly outcome: string;
  readonly chance: number;
  readonly weights: Float64Array;
  readonly range?: readonly [from: number, to: number];
}

interface Informed extends Pick<RankedCheck, 'check' | 'minutes' | 'bits' | 'repeat'> {
  readonly possible: readonly Possible[];
}
type WeighedCheck = Informed & Pick<RankedCheck, 'savingMinor' | 'savingPerMinuteMinor'>;

function byWorth(a: WeighedCheck, b: WeighedCheck): number {
  const money = b.savingPerMinuteMinor - a.savingPerMinuteMinor;
  return Math.abs(money) > SAME_MINOR ? money : bitRate(b) - bitRate(a);
}

const bitRate = ({ bits, minutes }: Informed): number => bits / lasting(minutes);

/** Minutes to divide by: nothing takes no time at all. */
const lasting = (minutes: number): number => Math.max(minutes, 0.1);

/** Now, with the unit opened to a stage: what the best row of remedies brings, and what following it brings in each state. */
interface Base {
  readonly stakes: Stakes;
  readonly expectedMinor: number;
  readonly worth: Float64Array;
}

class Desk {
  private readonly workshop: Workshop;
  private readonly before: Float64Array;
  private readonly now: number;
  private readonly bases = new Map<Stage, Base>();

  constructor(
    private readonly model: DeviceModel,
    private readonly belief: Belief,
    private readonly stakes: Stakes,
    private readonly readings?: ReadingsAhead,
  ) {
    this.workshop = Workshop.for(model, belief);
    this.before = faultChances(belief.space, belief.weights);
    this.now = this.baseAt(stakes.stage).expectedMinor;
  }

  inform(check: Check, before: readonly Observation[]): Informed {
    const possible = this.possible(check, before);
    const bits = Math.max(0, entropyBits(mixOf(possible)) - meanOf(possible, entropyBits));
    const minutes = this.ownMinutes(check) + openingMinutes(this.stakes, check.stage);
    return { check, minutes, bits, repeat: before.length > 0, possible };
  }

  weigh(informed: Informed): WeighedCheck {
    const { check, minutes, possible } = informed;
    const base = this.baseAt(openedTo(this.stakes, check.stage).stage);
    const gain = meanOf(possible, (weights) => this.gainAfter(base, weights));
    const savingMinor = gain + this.wayShared(base, check, gain);
    return { ...informed, savingMinor, savingPerMinuteMinor: savingMinor / lasting(minutes) };
  }

  /** What the repair saves by finding the unit open so far: all of it when the check pays for its own minutes, else in proportion. */
  private wayShared(base: Base, check: Check, gain: number): number {
    const own = Math.max(minutesCost(this.stakes, this.ownMinutes(check)), SAME_MINOR);
    return Math.max(0, base.expectedMinor - this.now) * Math.min(1, gain / own);
  }

  private possible(check: Check, before: readonly Observation[]): Possible[] {
    const ahead = check.kind === 'measure' ? this.readings?.outcomesAt(check.point) : undefined;
    const outcomes = ahead ?? outcomesOf(this.model, this.belief, check, before);
    return outcomes.flatMap(({ outcome, chance, likelihood, range }) => {
      if (chance < LEAST_CHANCE) return [];
      const weights = this.belief.weights.slice();
      multiply(weights, likelihood);
      return [{ outcome, chance, weights, ...(range ? { range } : {}) }];
    });
  }

  private ownMinutes(check: Check): number {
    return (check.kind === 'measure' ? this.readings?.minutesAt(check.point) : undefined) ?? check.minutes;
  }

  /** How much more a new row for what is then believed brings than the one of now. The better is taken, so knowing more never brings less. */
  private gainAfter(base: Base, weights: Float64Array): number {
    return Math.max(0, bestRow(this.workshop, weights, base.stakes).expectedMinor - meanOver(weights, base.worth));
  }

  private baseAt(stage: Stage): Base {
    const known = this.bases.get(stage);
    if (known) return known;
    const stakes = { ...this.stakes, stage };
    const row = bestRow(this.workshop, this.belief.weights, stakes);
    const base = { stakes, expectedMinor: row.expectedMinor, worth: worthByState(this.workshop, row.steps, stakes) };
    this.bases.set(stage, base);
    return base;
  }

  tell({ possible, ...ranked }: WeighedCheck): RankedCheck {
    return { ...ranked, outcomes: possible.map(({ weights, ...outcome }) => ({ ...outcome, ...this.meaning(weights) })) };
  }

  private meaning(weights: Float64Array): Pick<CheckOutcome, 'sets' | 'marginalShift'> {
    const { space } = this.belief;
    const after = faultChances(space, weights);
    const before = this.before;
    const moved = largest(after.length, (fault) => Math.abs(after[fault]! - before[fault]!));
    return {
      sets: likeliest(space, weights).map((s) => ({
        faults: space.members[s]!.map((fault) => this.model.faults[fault]!.id),
        chance: weights[s]!,
      })),
      marginalShift: moved.map((fault) => ({ fault: this.model.faults[fault]!.id, from: before[fault]!, to: after[fault]! })),
    };
  }
}

/** Mean over the outcomes of what holds after each. */
const meanOf = (possible: readonly Possible[], of: (weights: Float64Array) => number): number =>
  possible.reduce((sum, { chance, weights }) => sum + chance * of(weights), 0);

/** What will be believed on average. Of a check that is new this is what is believed now. */
function mixOf(possible: readonly Possible[]): Float64Array {
  const mix = new Float64Array(possible[0]!.weights.length);
  for (const { chance, weights } of possible) for (let s = 0; s < mix.length; s++) mix[s]! += chance * weights[s]!;
  return mix;
}

/** States of the likeliest sets. */
const likeliest = (space: StateSpace, weights: Float64Array): number[] => largest(space.unknown, (s) => weights[s]!);

/** Places of the few largest of so many values, the largest first. */
function largest(count: number, value: (place: number) => number): number[] {
  const best: number[] = [];
  for (let place = 0; place < count; place++) {
    const own = value(place);
    if (best.length === TOLD && own <= value(best[TOLD - 1]!)) continue;
    const at = best.findIndex((other) => own > value(other));
    best.splice(at < 0 ? best.length : at, 0, place);
    best.length = Math.min(best.length, TOLD);
  }
  return best;
}

function entropyBits(weights: Float64Array): number {
  let bits = 0;
  for (const w of weights) if (w > 0) bits -= w * Math.log2(w);
  return bits;
}
