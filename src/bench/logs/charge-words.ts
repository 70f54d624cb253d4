import type { Alarm, ChargeAnswer, PhaseKind, Reason, Verdict } from '../../core/rework/index.ts';
import type { TestVerdict } from '../events/index.ts';

const figures = (value: number, digits = 3): string => String(Number(value.toPrecision(digits)));
const percent = (share: number): string => `${Math.round(100 * share)} %`;
export const milli = (value: number): string => `${Math.round(1000 * value)}`;

const STATE_WORDS: Readonly<Record<TestVerdict, string>> = {
  good: 'good',
  suspect: 'suspect',
  bad: 'bad',
  'not-known': 'not to be told from this log',
};

const REASONS: Readonly<Record<Reason, (value: number) => string>> = {
  'ends-as-it-should': (a) => `it holds its voltage within its tolerance and ends by itself, at ${milli(a)} mA`,
  'held-voltage-off': (v) => `it holds ${figures(v, 4)} V, which is off by more than its tolerance`,
  'over-voltage': (v) => `it goes up to ${figures(v, 4)} V, above what the cell bears: stop using it`,
  'no-termination': (a) => `it does not end by itself: ${milli(a)} mA still flow and no longer fall`,
  'never-held': () => 'the log ends before it holds its voltage and ends by itself',
  'current-steady': (a) => `a steady ${milli(a)} mA came through`,
  'current-drops-out': (count) => `the current drops out (${count} times): a contact or a joint that lets go`,
  'current-too-small': (a) => `only ${milli(a)} mA come through`,
  'current-unknown': () => 'no stretch of steady current is in the log',
  'capacity-good': (share) => `it took or gave ${percent(share)} of what is printed on it`,
  'capacity-worn': (share) => `it took or gave ${percent(share)} of what is printed on it: worn`,
  'capacity-spent': (share) => `it took or gave only ${percent(share)} of what is printed on it: spent`,
  'capacity-not-known': () => 'the log does not go all the way, or what is printed on the cell was not said',
  'found-too-low': (v) => `it was found at ${figures(v)} V, too low to be revived: recycle it`,
  'gets-hot': (c) => `it gets hot (${figures(c)} °C, or so many kelvin above its start): stop using it`,
  'high-resistance': (ohm) => `its resistance of ${milli(ohm)} mΩ makes it sag under load`,
  'not-seen-in-a-discharge': () => 'a discharge does not show it',
};

/** "Cell: worn …": a verdict with its reason and the number behind it. */
export const verdictWords = (what: string, { state, reason, value }: Verdict): string =>
  `${what} ${STATE_WORDS[state]}: ${REASONS[reason](value ?? Number.NaN)}.`;

const ALARMS: Readonly<Record<Alarm['kind'], string>> = {
  'over-voltage': 'Over-voltage',
  'no-termination': 'Charging does not end',
  hot: 'Hot',
  'too-hot-to-charge': 'Too hot to be charged',
  'too-cold-to-charge': 'Too cold to be charged',
  'found-too-low': 'Found too low to be charged',
  'empty-too-deep': 'Emptied too deep',
};

/** An alarm with its number and its limit, and when it first showed. */
export function alarmWords({ kind, at, value, limit, unit }: Alarm): string {
  const bound = kind === 'no-termination' ? '' : `, limit ${figures(limit, 4)} ${unit}`;
  return `${ALARMS[kind]} after ${Math.round(at / 60)} min: ${figures(value, 4)} ${unit}${bound}.`;
}

export const PHASE_WORDS: Readonly<Record<PhaseKind, string>> = {
  rest: 'Rest',
  gentle: 'Gentle start',
  'constant-current': 'Constant current',
  'constant-voltage': 'Constant voltage',
  discharge: 'Discharge',
};

const REFUSALS: Readonly<Record<Extract<ChargeAnswer, { ok: false }>['code'], string>> = {
  'chemistry-not-said': 'Say which kind of cell it is, as its label has it. It is never guessed: a wrong guess can set a cell on fire.',
  'too-short': 'There are too few rows to judge. At least ten are needed.',
  'no-current': 'No current flowed, so there is nothing to judge.',
  'not-this-chemistry':
    'These voltages are not those of such a cell, or not of so many in series. Check the kind of cell and their number.',
};

/** Why a log was not judged, and what to do. */
export const chargeRefusalWords = (code: keyof typeof REFUSALS): string => REFUSALS[code];
