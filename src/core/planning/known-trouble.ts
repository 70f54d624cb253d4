import type { Outcome } from './outcomes.ts';

/** A piece of work that may remove faults, as it would be done from where the unit stands. */
export interface Cure {
  readonly id: string;
  /** Chance that it removes each fault. */
  readonly mends: Readonly<Record<string, number>>;
  /** The work with opening and the test after it. */
  readonly minutes: number;
  readonly partsMinor: number;
  /** Chance that the work ruins the unit. */
  readonly risk: number;
}

/** What a unit is worth working, given up, and what an hour is worth. */
export interface Worth {
  readonly workingMinor: number;
  readonly asIsMinor: number;
  readonly hourMinor: number;
}

/** What one would do if the trouble were known. */
export interface Course {
  /** The cures, in order; empty when giving up at once is worth more. */
  readonly cures: readonly string[];
  readonly chance: number;
  /** Expected. */
  readonly minutes: number;
  readonly spendMinor: number;
  readonly outcomes: readonly Outcome[];
  readonly valueMinor: number;
}

/**
 * The best of some plain courses for a known set of at most two faults: giving up; one cure that is meant for all of
 * them; one cure for each, tried together; for a single fault also a second cure where the first fails. Exact for
 * those courses; longer ones are left out, so the value is a lower bound of what is possible. `faults` is not empty.
 */
export function courseFor(faults: readonly string[], cures: readonly Cure[], worth: Worth): Course {
  const meant = cures.filter((cure) => faults.every((fault) => (cure.mends[fault] ?? 0) > 0));
  const single = meant.map((cure) => shot([cure], faults, worth));
  const [a, b] = faults;
  const joint = a !== undefined && b !== undefined ? pairs(a, b, cures, worth).map((pair) => shot(pair, faults, worth)) : [];
  const twice = a !== undefined && b === undefined ? secondShots(meant, a, worth) : [];
  return [...single, ...joint, ...twice].reduce((best, course) => (course.valueMinor > best.valueMinor ? course : best), giveUp(worth));
}

const giveUp = ({ asIsMinor }: Worth): Course => ({
  cures: [],
  chance: 0,
  minutes: 0,
  spendMinor: 0,
  outcomes: [{ valueMinor: asIsMinor, chance: 1 }],
  valueMinor: asIsMinor,
});

/** For each of the two faults the cure that removes it most often for its cost. */
function pairs(a: string, b: string, cures: readonly Cure[], worth: Worth): Cure[][] {
  const first = bestFor(a, cures, worth);
  const second = bestFor(b, cures, worth);
  return first && second && first !== second ? [[first, second]] : [];
}

function bestFor(fault: string, cures: readonly Cure[], worth: Worth): Cure | undefined {
  const ratio = (cure: Cure): number => (cure.mends[fault] ?? 0) / Math.max(costOf(cure, worth), 1);
  const able = cures.filter((cure) => (cure.mends[fault] ?? 0) > 0);
  return able.reduce<Cure | undefined>((best, cure) => (!best || ratio(cure) > ratio(best) ? cure : best), undefined);
}

const costOf = (cure: Cure, { hourMinor }: Worth): number => (cure.minutes / 60) * hourMinor + cure.partsMinor;

/** All these cures, then the test. */
function shot(cures: readonly Cure[], faults: readonly string[], worth: Worth): Course {
  const cost = cures.reduce((sum, cure) => sum + costOf(cure, worth), 0);
  const whole = cures.reduce((chance, cure) => chance * (1 - cure.risk), 1);
  const left = (fault: string): number => cures.reduce((chance, cure) => chance * (1 - (cure.mends[fault] ?? 0)), 1);
  const chance = whole * faults.reduce((all, fault) => all * (1 - left(fault)), 1);
  const outcomes = [
    { valueMinor: worth.workingMinor - cost, chance },
    { valueMinor: worth.asIsMinor - cost, chance: 1 - chance },
  ];
  return {
    cures: cures.map(({ id }) => id),
    chance,
    minutes: cures.reduce((sum, cure) => sum + cure.minutes, 0),
    spendMinor: cures.reduce((sum, cure) => sum + cure.partsMinor, 0),
    outcomes,
    valueMinor: chance * worth.workingMinor + (1 - chance) * worth.asIsMinor - cost,
  };
}

/** One cure, and where it fails another one. */
function secondShots(cures: readonly Cure[], fault: string, worth: Worth): Course[] {
  return cures.flatMap((first) =>
    cures
      .filter((second) => second !== first)
      .map((second) => chained(shot([first], [fault], worth), shot([second], [fault], worth), worth)),
  );
}

function chained(first: Course, second: Course, { asIsMinor }: Worth): Course {
  const failed = 1 - first.chance;
  const paid = asIsMinor - first.outcomes[1]!.valueMinor;
  const later = second.outcomes.map((o) => ({ valueMinor: o.valueMinor - paid, chance: failed * o.chance }));
  return {
    cures: [...first.cures, ...second.cures],
    chance: first.chance + failed * second.chance,
    minutes: first.minutes + failed * second.minutes,
    spendMinor: first.spendMinor + failed * second.spendMinor,
    outcomes: [first.outcomes[0]!, ...later],
    valueMinor: first.chance * first.outcomes[0]!.valueMinor + failed * (second.valueMinor - paid),
  };
}
