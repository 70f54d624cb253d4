import type { FindingKind, MeterMode, Outcome, Stage } from '../../../bench/events/index.ts';
import type { Road, Status } from '../../../bench/views/index.ts';

/** The plain words for what the bench names by code. */

export const OUTCOME_WORDS: Readonly<Record<Outcome, string>> = { works: 'Works', fails: 'Fails', 'comes-and-goes': 'Comes and goes' };

export const FINDING_WORDS: Readonly<Record<FindingKind, string>> = {
  'nothing-wrong': 'Nothing wrong',
  missing: 'Missing',
  bridged: 'Bridged',
  moved: 'Moved or tilted',
  corrosion: 'Corrosion',
  residue: 'Residue',
  'track-damaged': 'Track damaged',
  'dry-joint': 'Dry joint',
  burnt: 'Burnt',
  cracked: 'Cracked',
  dirty: 'Dirty',
  worn: 'Worn',
  loose: 'Loose',
  swollen: 'Swollen',
  'opened-before': 'Opened before',
};
export const FINDING_KINDS = Object.keys(FINDING_WORDS) as readonly FindingKind[];

export const STAGE_WORDS: Readonly<Record<Stage, string>> = { closed: 'Closed', open: 'Open', 'board-out': 'Board out' };

const STAGE_DEPTH: Readonly<Record<Stage, number>> = { closed: 0, open: 1, 'board-out': 2 };
/** Whether `needed` is further open than `now`. */
export const isDeeper = (needed: Stage, now: Stage): boolean => STAGE_DEPTH[needed] > STAGE_DEPTH[now];

export const STATUS_WORDS: Readonly<Record<Status, string>> = {
  bought: 'On its way',
  'on-the-bench': 'On the bench',
  proved: 'Proved',
  listed: 'Listed',
  sold: 'Sold',
  kept: 'Kept',
  scrapped: 'Scrapped',
  'in-a-unit': 'In a unit',
  'in-the-drawer': 'In the drawer',
};
export const STATUSES = Object.keys(STATUS_WORDS) as readonly Status[];

export const ROAD_WORDS: Readonly<Record<Road, string>> = {
  repair: 'Repair',
  transplant: 'Transplant',
  'part-out': 'Part out',
  leave: 'Leave as it is',
};

export const MODE_WORDS: Readonly<Record<MeterMode, string>> = { volts: 'Volts', ohms: 'Ohms', diode: 'Diode', amps: 'Amps' };

const METER_OUTCOMES: Readonly<Record<string, string>> = {
  'as-reference': 'As on a good one',
  low: 'Lower than on a good one',
  high: 'Higher than on a good one',
  zero: 'Near zero',
  open: 'OL',
};

/** The words for an outcome of any check; one that is not known here is shown by its own name. */
export const outcomeWords = (outcome: string): string =>
  (OUTCOME_WORDS as Readonly<Record<string, string>>)[outcome] ??
  (FINDING_WORDS as Readonly<Record<string, string>>)[outcome] ??
  METER_OUTCOMES[outcome] ??
  outcome.replaceAll('-', ' ');
