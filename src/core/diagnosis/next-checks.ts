import { behavioursOf, chanceOf } from './behaviour.ts';
import type { Belief } from './believe.ts';
import { minutesCost, openedTo, openingMinutes } from './getting-there.ts';
import { findingChances, findingKinds } from './looking.ts';
import { BANDS, bandChances } from './metering.ts';
import type { Behaviour, Check, DeviceModel, Evidence, Stakes } from './model.ts';
import { marginals, multiply } from './posterior-over-sets.ts';
import { Workshop } from './rank-remedies.ts';
import { planFrom } from './repair-plan.ts';

export interface CheckOutcome {
  /** works, comes-and-goes, fails; a kind of finding; normal, low, high, near zero, OL. */
  readonly outcome: string;
  readonly chance: number;
  /** The likeliest sets after it. */
  readonly sets: readonly { readonly faults: readonly string[]; readonly chance: number }[];
  /** The faults whose chance it would move most. */
  readonly marginalShift: readonly { readonly fault: string; readonly from: number; readonly to: number }[];
}

export interface RankedCheck {
  readonly check: Check;
  /** Its own minutes and the way to get at it. */
  readonly minutes: number;
  /** How much more the best that can be done is expected to bring once the outcome is known, its minutes not yet paid. */
  readonly savingMinor: number;
  readonly savingPerMinuteMinor: number;
  /** Expected information about the set of faults, bits. */
  readonly bits: number;
  readonly outcomes: readonly CheckOutcome[];
  /** True when the same check was done since the last change: it tells little again. */
  readonly repeat: boolean;
}

/** Of what a check would tell, a repetition of it tells this share: the unit and the person are the same. */
const REPEAT_SHARE = 0.1;
/** An outcome less likely than this is not looked into. */
const LEAST_CHANCE = 1e-4;
const TOLD = 4;

/**
 * Checks by worth per minute: the expected gain in money of the best plan of repair that follows (or of giving up) from knowing the outcome, bits
 * of information as tie-break. One step ahead; a trial found two steps no better. `skip` leaves out what the person declined.
 */
export function nextChecks(
  model: DeviceModel,
  belief: Belief,
  evidence: readonly Evidence[],
  stakes: Stakes,
  options: { readonly skip?: ReadonlySet<string>; readonly limit?: number } = {},
): RankedCheck[] {
  const desk = new Desk(model, belief, stakes, doneSinceChange(evidence));
  const asked = model.checks.filter(({ id }) => !options.skip?.has(id));
  const ranked = asked.map((check) => desk.rank(check)).sort(byWorth);
  return ranked.slice(0, options.limit ?? ranked.length);
}

function byWorth(a: RankedCheck, b: RankedCheck): number {
  const money = b.savingPerMinuteMinor - a.savingPerMinuteMinor;
  return Math.abs(money) > 1e-9 ? money : b.bits / Math.max(b.minutes, 0.1) - a.bits / Math.max(a.minutes, 0.1);
}

class Desk {
  private readonly workshop: Workshop;
  private readonly now: number;
  private readonly entropy: number;

  constructor(
    private readonly model: DeviceModel,
    private readonly belief: Belief,
    private readonly stakes: Stakes,
    private readonly done: ReadonlySet<string>,
  ) {
    this.workshop = new Workshop(model, belief.space);
    this.now = planFrom(this.workshop, belief.weights, stakes).expectedMinor;
    this.entropy = entropyBits(belief.weights);
  }

  rank(check: Check): RankedCheck {
    const outcomes = this.likelihoods(check).map(([outcome, likelihood]) => this.outcome(outcome, likelihood));
    const possible = outcomes.filter(({ chance }) => chance > LEAST_CHANCE);
    const minutes = check.minutes + openingMinutes(this.stakes, check.stage);
    const repeat = this.done.has(keyOfCheck(check));
    const share = repeat ? REPEAT_SHARE : 1;
    const worth = possible.map(({ chance, weights }) => ({ chance, value: this.valueAfter(check, weights), bits: entropyBits(weights) }));
    const base = this.valueAfter(check, this.belief.weights);
    const savingMinor =
      share *
      Math.max(
        worth.reduce((sum, { chance, value }) => sum + chance * (value - base), 0),
        0,
      );
    const bits =
      share *
      Math.max(
        worth.reduce((sum, { chance, bits: after }) => sum + chance * (this.entropy - after), 0),
        0,
      );
    const told = possible.map(({ outcome, chance, weights }) => ({ outcome, chance, ...this.tell(weights) }));
    return { check, minutes, savingMinor, savingPerMinuteMinor: savingMinor / Math.max(minutes, 0.1), bits, outcomes: told, repeat };
  }

  /** The unit is open that far after the check; what that saves later belongs to the way, not to the knowledge. */
  private valueAfter(check: Check, weights: Float64Array): number {
    const stakes = openedTo(this.stakes, check.stage);
    return stakes === this.stakes && weights === this.belief.weights ? this.now : planFrom(this.workshop, weights, stakes).expectedMinor;
  }

  private outcome(outcome: string, likelihood: Float64Array): { outcome: string; chance: number; weights: Float64Array } {
    const weights = this.belief.weights.slice();
    const chance = weights.reduce((sum, weight, state) => sum + weight * likelihood[state]!, 0);
    if (chance > LEAST_CHANCE) multiply(weights, (state) => likelihood[state]!);
    return { outcome, chance, weights };
  }

  /** Chance of each outcome in each state, scaled so that the outcomes of a check share the whole of each state. */
  private likelihoods(check: Check): [string, Float64Array][] {
    const { model } = this;
    const { space, absent } = this.belief;
    if (check.kind === 'try') {
      const behaviours = behavioursOf(model, space, check.function, check.with, absent);
      const of = (outcome: Behaviour): [string, Float64Array] => [outcome, Float64Array.from(behaviours, (b) => chanceOf(b, outcome))];
      return [of('works'), of('comes-and-goes'), of('fails')];
    }
    if (check.kind === 'look')
      return shared(findingKinds(model, check.block).map((kind) => [kind, findingChances(model, space, check.block, kind)]));
    const point = model.points.find(({ id }) => id === check.point);
    return point?.reference ? BANDS.map((band) => [band, bandChances(model, space, point, band)]) : [];
  }

  private tell(weights: Float64Array): Pick<CheckOutcome, 'sets' | 'marginalShift'> {
    const { space, marginal } = this.belief;
    const name = (fault: number): string => this.model.faults[fault]!.id;
    const likeliest = space.members
      .map((faults, state) => ({ faults: faults.map(name), chance: weights[state]!, state }))
      .filter(({ state }) => state !== space.unknown)
      .sort((a, b) => b.chance - a.chance)
      .slice(0, TOLD);
    const after = marginals(space.members, weights);
    const shifts = this.model.faults.map(({ id }, fault) => ({ fault: id, from: marginal.get(id)!, to: after.get(fault) ?? 0 }));
    const marginalShift = shifts.sort((a, b) => Math.abs(b.to - b.from) - Math.abs(a.to - a.from)).slice(0, TOLD);
    return { sets: likeliest.map(({ faults, chance }) => ({ faults, chance })), marginalShift };
  }
}

function shared(outcomes: [string, Float64Array][]): [string, Float64Array][] {
  const sums = new Float64Array(outcomes[0]?.[1].length ?? 0);
  for (const [, likelihood] of outcomes) likelihood.forEach((p, state) => (sums[state]! += p));
  return outcomes.map(([outcome, likelihood]) => [outcome, likelihood.map((p, state) => p / sums[state]!)]);
}

const entropyBits = (weights: Float64Array): number => weights.reduce((sum, w) => (w > 0 ? sum - w * Math.log2(w) : sum), 0);

/** Checks that were answered since the last remedy, transplant or other change of the unit. */
function doneSinceChange(evidence: readonly Evidence[]): ReadonlySet<string> {
  const lastChange = evidence.findLastIndex(({ kind }) => kind === 'remedy' || kind === 'transplant');
  return new Set(evidence.slice(lastChange + 1).flatMap(keyOfEvidence));
}

function keyOfEvidence(piece: Evidence): string[] {
  if (piece.kind === 'trial') return [`try ${piece.function} ${[...piece.with].sort().join(' ')}`];
  if (piece.kind === 'finding') return [`look ${piece.block}`];
  return piece.kind === 'reading' ? [`measure ${piece.point}`] : [];
}

function keyOfCheck(check: Check): string {
  if (check.kind === 'try') return `try ${check.function} ${[...check.with].sort().join(' ')}`;
  return check.kind === 'look' ? `look ${check.block}` : `measure ${check.point}`;
}

/** Whether a check is worth its own minutes. */
export const paysForItself = (ranked: RankedCheck, stakes: Stakes): boolean => ranked.savingMinor > minutesCost(stakes, ranked.minutes);
