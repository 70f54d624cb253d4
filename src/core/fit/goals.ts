/** Fillets wanted at toe, heel and side of a foot, mm: `most` (level A), `nominal` (B), `least` (C). */
export interface FilletGoal {
  readonly toeMm: Levels;
  readonly heelMm: Levels;
  readonly sideMm: Levels;
}
type Levels = readonly [most: number, nominal: number, least: number];
export type Level = 'most' | 'nominal' | 'least';
export const LEVELS: readonly Level[] = ['most', 'nominal', 'least'];

export type Family =
  'gull-wing-wide' | 'gull-wing-fine' | 'j-lead' | 'chip-large' | 'chip-small' | 'barrel' | 'inward-l' | 'no-lead' | 'flat-lead';

const goal = (toeMm: Levels, heelMm: Levels, sideMm: Levels): FilletGoal => ({ toeMm, heelMm, sideMm });

/** Source: IPC-7351B tables 3-2 to 3-22, from secondary copies; checked against check values 6.1. */
export const GOALS: Readonly<Record<Family, FilletGoal>> = {
  'gull-wing-wide': goal([0.55, 0.35, 0.15], [0.45, 0.35, 0.25], [0.05, 0.03, 0.01]),
  'gull-wing-fine': goal([0.55, 0.35, 0.15], [0.45, 0.35, 0.25], [0.01, -0.02, -0.04]),
  'j-lead': goal([0.1, 0, -0.1], [0.55, 0.35, 0.15], [0.05, 0.03, 0.01]),
  'chip-large': goal([0.55, 0.35, 0.15], [0, 0, 0], [0.05, 0, -0.05]),
  'chip-small': goal([0.3, 0.2, 0.1], [0, 0, 0], [0.05, 0, -0.05]),
  barrel: goal([0.6, 0.4, 0.2], [0.2, 0.1, 0.02], [0.1, 0.05, 0.01]),
  'inward-l': goal([0.25, 0.15, 0.07], [0.8, 0.5, 0.2], [0.01, -0.05, -0.1]),
  'no-lead': goal([0.4, 0.3, 0.2], [0, 0, 0], [-0.04, -0.04, -0.04]),
  'flat-lead': goal([0.3, 0.2, 0.1], [0, 0, 0], [0.05, 0, -0.05]),
};

/** The border between the two families of gull wings, mm of pitch, and that of chips, mm of length (IPC-7351B). */
const FINE_PITCH_MM = 0.625;
const LARGE_CHIP_MM = 1.6;

/** The goals for a kind of part at a pitch (mm between neighbours; of a chip its length); null where none are published here. */
export function familyOf(kind: string, pitchMm: number): Family | null {
  if (kind === 'gull-wing') return pitchMm > FINE_PITCH_MM ? 'gull-wing-wide' : 'gull-wing-fine';
  if (kind === 'chip') return pitchMm >= LARGE_CHIP_MM ? 'chip-large' : 'chip-small';
  return kind === 'j-lead' || kind === 'no-lead' ? kind : null;
}

/** The fillets of one foot, mm; below zero where the foot reaches past its land. */
export interface Fillets {
  readonly toeMm: number;
  readonly heelMm: number;
  readonly sideMm: number;
}

/** What rounding to a micrometre may take away. */
const SLACK_MM = 0.001;

/** The best level that fillets reach, or null when they are below the least. */
export function levelOf(fillets: Fillets, family: Family): Level | null {
  const { toeMm, heelMm, sideMm } = GOALS[family];
  const index = LEVELS.findIndex(
    (_, i) => fillets.toeMm >= toeMm[i]! - SLACK_MM && fillets.heelMm >= heelMm[i]! - SLACK_MM && fillets.sideMm >= sideMm[i]! - SLACK_MM,
  );
  return LEVELS[index] ?? null;
}
