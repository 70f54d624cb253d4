import type { Belief } from './belief.ts';
import { minutesCost, openingMinutes } from './getting-there.ts';
import type { DeviceModel, Remedy, Stakes } from './model.ts';
import type { StateSpace } from './state-space.ts';

/** To try the unit after a remedy; common practice, no source. */
const TEST_MINUTES = 2;

/** What one remedy does to the states that hold a fault which it can mend; entry by entry, in the order of states. */
interface Effect {
  readonly states: Int32Array;
  /** Chance that the lower and the higher fault of the state goes; of a single fault only the first counts. */
  readonly mendsFirst: Float64Array;
  readonly mendsSecond: Float64Array;
  /** Chance that nothing is left, and the share of the faults that goes. */
  readonly cures: Float64Array;
  readonly progress: Float64Array;
}

/** The remedies of a model over the states of a belief, laid out once for the many beliefs that a choice looks ahead to. */
export class Workshop {
  readonly effects: readonly Effect[];
  /** False where a function needs a block that is absent: then nothing that is done to the rest makes the unit work. */
  readonly complete: boolean;

  constructor(
    readonly model: DeviceModel,
    readonly space: StateSpace,
    absent: ReadonlySet<string>,
  ) {
    const places = new Map(model.faults.map(({ id }, fault) => [id, fault]));
    this.effects = model.remedies.map((remedy) => effectOf(places, space, remedy));
    this.complete = !model.functions.some(({ needs }) => needs.some((need) => need.every((block) => absent.has(block))));
  }

  static for(model: DeviceModel, belief: Belief): Workshop {
    return new Workshop(model, belief.space, belief.absent);
  }

  /** Weight that the remedy takes to "nothing is wrong", and its progress: the same where half of a pair counts half. */
  gain(remedy: number, weights: Float64Array): { readonly cured: number; readonly progress: number } {
    const { states, cures, progress: goes } = this.effects[remedy]!;
    let cured = 0;
    let progress = 0;
    for (let i = 0; i < states.length; i++) {
      const weight = weights[states[i]!]!;
      cured += weight * cures[i]!;
      progress += weight * goes[i]!;
    }
    return { cured, progress };
  }

  /** Moves weights on, in place, as if the remedy was done and the unit still does not work; what it cured is lost. */
  fail(remedy: number, weights: Float64Array): void {
    const { states, mendsFirst, mendsSecond } = this.effects[remedy]!;
    const { first, second } = this.space;
    for (let i = 0; i < states.length; i++) {
      const state = states[i]!;
      const weight = weights[state]!;
      const [p, q] = [mendsFirst[i]!, mendsSecond[i]!];
      if (second[state]! >= 0) {
        weights[1 + first[state]!]! += weight * (1 - p) * q;
        weights[1 + second[state]!]! += weight * p * (1 - q);
      }
      weights[state] = weight * (1 - p) * (1 - q);
    }
  }

  /** The transpose of `fail` with what a cure brings: takes the value of each state after the remedy to that before it, in place. */
  valueBefore(remedy: number, values: Float64Array, cureValue: number): void {
    const { states, mendsFirst, mendsSecond } = this.effects[remedy]!;
    const { first, second } = this.space;
    for (let i = states.length - 1; i >= 0; i--) {
      const state = states[i]!;
      const [p, q] = [mendsFirst[i]!, mendsSecond[i]!];
      const stays = (1 - p) * (1 - q) * values[state]!;
      if (second[state]! < 0) values[state] = stays + p * cureValue;
      else values[state] = stays + p * q * cureValue + (1 - p) * q * values[1 + first[state]!]! + p * (1 - q) * values[1 + second[state]!]!;
    }
  }
}

function effectOf(places: ReadonlyMap<string, number>, { size, faults, first, second }: StateSpace, remedy: Remedy): Effect {
  const mends = new Float64Array(faults);
  for (const [id, chance] of Object.entries(remedy.mends)) {
    const fault = places.get(id);
    if (fault !== undefined) mends[fault] = chance;
  }
  const states: number[] = [];
  for (let s = 0; s < size; s++) {
    const [a, b] = [first[s]!, second[s]!];
    if ((a >= 0 && mends[a]! > 0) || (b >= 0 && mends[b]! > 0)) states.push(s);
  }
  const mendsFirst = Float64Array.from(states, (state) => mends[first[state]!]!);
  const mendsSecond = Float64Array.from(states, (state) => (second[state]! < 0 ? 0 : mends[second[state]!]!));
  const isPair = (i: number): boolean => second[states[i]!]! >= 0;
  return {
    states: Int32Array.from(states),
    mendsFirst,
    mendsSecond,
    cures: mendsFirst.map((p, i) => (isPair(i) ? p * mendsSecond[i]! : p)),
    progress: mendsFirst.map((p, i) => (isPair(i) ? (p + mendsSecond[i]!) / 2 : p)),
  };
}

/** Minutes of a remedy with the way to get at it and the trial after it. */
export const remedyMinutes = (remedy: Remedy, stakes: Stakes): number =>
  remedy.minutes + openingMinutes(stakes, remedy.stage) + TEST_MINUTES;

/** Minor units for those minutes and its parts. */
export const remedyCost = (remedy: Remedy, stakes: Stakes): number =>
  minutesCost(stakes, remedyMinutes(remedy, stakes)) + remedy.partsCostMinor;
