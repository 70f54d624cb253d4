import type { Belief, RankedCheck } from '../../core/diagnosis/index.ts';
import type { DeviceModel, Stakes } from '../../core/diagnosis/model.ts';
import { courseFor, entropyBits, meanOf, merged, shiftedBy, type Course, type Cure, type Outcome } from '../../core/planning/index.ts';
import type { Model } from '../models/index.ts';
import { hourly, openingMinutes } from './road-option.ts';

/** To try the unit after the work; common practice, no source. */
const TEST_MINUTES = 2;

/** The best check tells most; those after it tell this share of its bits per minute on average. Common practice, no source. */
const LATER_CHECKS = 0.5;

/** Sets of faults less likely than this are taken as not worth mending. */
const LEAST_CHANCE = 1e-4;

/** What the checks at hand can tell. */
export interface Telling {
  readonly bitsPerMinute: number;
  /** All checks together: no more than this can be told, and no more time spent. */
  readonly bits: number;
  readonly minutes: number;
}

/** Repairing after finding out what is wrong, instead of trying remedies in the dark. */
export interface Knowing {
  readonly outcomes: readonly Outcome[];
  readonly valueMinor: number;
  readonly chance: number;
  /** Of checks and of work, expected. */
  readonly checkMinutes: number;
  readonly workMinutes: number;
  readonly spendMinor: number;
  /** Part of what would have to be known that the checks can tell. */
  readonly share: number;
}

/** A check that tells less is not worth a line. */
export const LEAST_BITS = 0.003;

/** Whether a check tells something: repetitions tell nothing new. */
export const tellsMore = (ranked: RankedCheck): boolean => !ranked.repeat && ranked.bits > LEAST_BITS;

/** From the ranked checks. */
export function tellingOf(checks: readonly RankedCheck[]): Telling {
  const fresh = checks.filter(tellsMore);
  const rate = Math.max(0, ...fresh.map((ranked) => ranked.bits / Math.max(ranked.minutes, 0.5)));
  return {
    bitsPerMinute: rate * LATER_CHECKS,
    bits: fresh.reduce((sum, ranked) => sum + ranked.bits, 0),
    minutes: fresh.reduce((sum, ranked) => sum + ranked.check.minutes, 0),
  };
}

/**
 * What a unit is worth when its trouble is looked for first: over the believed sets of faults the best course once
 * known, less the minutes of checks that telling the courses apart takes at the rate of the checks at hand. An
 * estimate between trying in the dark and knowing all for nothing: as far as the checks can tell too little, the
 * courses count with that share only and `dark` with the rest.
 */
export function knowing(
  model: Model,
  alone: DeviceModel,
  belief: Belief,
  stakes: Stakes,
  telling: Telling,
  dark: { readonly outcomes: readonly Outcome[]; readonly chance: number; readonly minutes: number; readonly spendMinor: number },
): Knowing | null {
  if (belief.absent.size > 0 || telling.bitsPerMinute <= 0) return null;
  const cures = alone.remedies.map((remedy) => cureOf(model, remedy, stakes));
  const courses = belief.sets
    .filter(({ chance }) => chance > LEAST_CHANCE)
    .map(({ faults, chance }) => ({ chance, course: courseOf(faults, cures, stakes) }));
  const covered = courses.reduce((sum, { chance }) => sum + chance, 0);
  courses.push({ chance: Math.max(0, 1 - covered), course: courseFor(['not in the model'], [], stakes) });
  const { share, checkMinutes } = lookingFor(courses, telling);
  const over = (of: (course: Course) => number, inTheDark: number): number =>
    share * courses.reduce((sum, { chance, course }) => sum + chance * of(course), 0) + (1 - share) * inTheDark;
  const outcomes = merged([
    ...courses.flatMap(({ chance, course }) =>
      course.outcomes.map((o) => ({ valueMinor: o.valueMinor, chance: share * chance * o.chance })),
    ),
    ...dark.outcomes.map((o) => ({ valueMinor: o.valueMinor, chance: (1 - share) * o.chance })),
  ]);
  const paid = shiftedBy(outcomes, -hourly(checkMinutes, stakes.hourMinor));
  return {
    outcomes: paid,
    valueMinor: meanOf(paid),
    chance: over((course) => course.chance, dark.chance),
    checkMinutes,
    workMinutes: over((course) => course.minutes, dark.minutes),
    spendMinor: over((course) => course.spendMinor, dark.spendMinor),
    share,
  };
}

function courseOf(faults: readonly string[], cures: readonly Cure[], stakes: Stakes): Course {
  if (faults.length > 0) return courseFor(faults, cures, stakes);
  const valueMinor = stakes.workingMinor - hourly(TEST_MINUTES, stakes.hourMinor);
  return { cures: ['nothing to do'], chance: 1, minutes: TEST_MINUTES, spendMinor: 0, outcomes: [{ valueMinor, chance: 1 }], valueMinor };
}

/** What part of the courses the checks can tell apart, and the minutes that it takes. */
export function lookingFor(
  courses: readonly { readonly chance: number; readonly course: Pick<Course, 'cures'> }[],
  telling: Telling,
): { readonly share: number; readonly checkMinutes: number } {
  const needed = bitsToTell(courses);
  if (needed <= 0) return { share: 1, checkMinutes: 0 };
  if (telling.bitsPerMinute <= 0) return { share: 0, checkMinutes: 0 };
  const share = Math.min(1, telling.bits / needed);
  return { share, checkMinutes: Math.min(telling.minutes, (share * needed) / telling.bitsPerMinute) };
}

/** Only what leads to different courses has to be told apart. */
function bitsToTell(courses: readonly { readonly chance: number; readonly course: Pick<Course, 'cures'> }[]): number {
  const byCourse = new Map<string, number>();
  for (const { chance, course } of courses) {
    const name = course.cures.join(' ');
    byCourse.set(name, (byCourse.get(name) ?? 0) + chance);
  }
  return entropyBits(byCourse.values());
}

export const cureOf = (model: Model, remedy: DeviceModel['remedies'][number], stakes: Stakes): Cure => ({
  id: remedy.id,
  mends: remedy.mends,
  minutes: remedy.minutes + openingMinutes(model, stakes.stage, remedy.stage) + TEST_MINUTES,
  partsMinor: remedy.partsCostMinor,
  risk: remedy.risk,
});
