import { ALLOYS, type Alloy, type HeatLimit, type HeatLimitId, type HeatVerdict } from '../../core/rework/index.ts';
import type { TestSaid } from './charge-test.ts';

export const LIMIT_NAMES: Readonly<Record<HeatLimitId, string>> = {
  peak: 'Hottest, against what the part bears',
  reflow: 'Hottest, against where the solder is all liquid',
  preheat: 'Time in the preheat',
  'above-liquidus': 'Time above liquidus',
  'near-peak': 'Time within 5 K of the hottest',
  'ramp-up': 'Fastest rise',
  'ramp-down': 'Fastest fall',
  'time-to-peak': 'Time from 25 °C to the hottest',
};

const figures = (value: number): string => String(Number(value.toFixed(value < 20 ? 1 : 0)));

/** "60 to 150 s", "at most 260 °C". */
export function boundsWords({ atLeast, atMost, unit }: Pick<HeatLimit, 'atLeast' | 'atMost' | 'unit'>): string {
  if (atLeast !== null && atMost !== null) return `${figures(atLeast)} to ${figures(atMost)} ${unit}`;
  return atLeast === null ? `at most ${figures(atMost!)} ${unit}` : `at least ${figures(atLeast)} ${unit}`;
}

/** A limit with its number, what is allowed, and whether that was kept. */
export const limitWords = (limit: HeatLimit): string =>
  `${LIMIT_NAMES[limit.id]}: ${figures(limit.value)} ${limit.unit}, ${boundsWords(limit)}: ${limit.passed ? 'passed' : 'missed'}.`;

const REFUSALS: Readonly<Record<Extract<HeatVerdict, { ok: false }>['code'], string>> = {
  'alloy-not-said': 'Say which solder was used: the limits hang on it.',
  'too-short': 'There are too few rows to judge: at least ten, over half a minute.',
  'never-hot': 'It never came as far as the preheat of this solder. Check the alloy and the unit of the column.',
};
export const heatRefusalWords = (code: keyof typeof REFUSALS): string => REFUSALS[code];

/** What to bear in mind with the limits that were taken. */
export const heatSourceWords = ({ source, knownAlloy }: Extract<HeatVerdict, { ok: true }>, alloy: Alloy): string =>
  `${source}. These are limits for the part, not a recipe for the joint.${
    knownAlloy ? '' : ` The standard does not know ${alloy}: times count above its own liquidus of ${ALLOYS[alloy].liquidusC} °C.`
  }`;

/** A judged log of heat as a test of the unit. */
export function heatTest(judged: Extract<HeatVerdict, { ok: true }>, alloy: Alloy): TestSaid {
  const missed = judged.limits.filter(({ passed }) => !passed);
  const tooMuch = missed.some(({ id }) => id === 'peak' || id === 'reflow');
  return {
    verdict: missed.length === 0 ? 'good' : tooMuch ? 'bad' : 'suspect',
    text: missed.length === 0 ? `Every limit for ${alloy} was kept.` : missed.map(limitWords).join(' '),
    values: judged.limits.map(({ id, value, unit }) => ({ name: LIMIT_NAMES[id], value: Number(value.toFixed(2)), unit })),
  };
}
