import { CHEMISTRIES, type Chemistry, type ChemistryId } from '../chemistries.ts';
import { alarmsIn, type Alarm } from './alarms.ts';
import { countCharge, type Charge } from './count-charge.ts';
import { phasesOf, type Phase } from './phases.ts';
import type { ChargeSample, Gap } from './sample.ts';
import { loggedResistance, type LoggedResistance } from './two-load-resistance.ts';
import { verdictsOf, type Verdicts } from './verdicts.ts';

export interface ChargeQuestion {
  /** As the label says; never guessed. */
  readonly chemistry: ChemistryId | undefined;
  /** Cells in series, 1 when left out. */
  readonly cells?: number;
  /** As printed on it, A h. */
  readonly ratedAh?: number;
  /** What the charger should give, A. */
  readonly chargerA?: number;
  readonly gaps?: readonly Gap[];
}

export interface ChargeJudged {
  readonly ok: true;
  readonly direction: 'charge' | 'discharge';
  readonly phases: readonly Phase[];
  readonly charge: Charge;
  /** What the cell took or gave, A h: all of it only when it went from empty to full or back, else at least this. */
  readonly capacityAh: number;
  readonly whole: boolean;
  readonly resistance: LoggedResistance | null;
  /** The last current before charging ended, A, and how: by itself, or with the log; null when the voltage was never held. */
  readonly end: { readonly amps: number; readonly terminated: boolean; readonly heldV: number } | null;
  readonly alarms: readonly Alarm[];
  readonly verdicts: Verdicts;
  /** True when the log has currents of the other sign than is written here, so that they were turned. */
  readonly turned: boolean;
}

export type ChargeAnswer =
  ChargeJudged | { readonly ok: false; readonly code: 'chemistry-not-said' | 'too-short' | 'no-current' | 'not-this-chemistry' };

/** Samples of at least this many make a log. */
const LEAST = 10;

/**
 * What a log of charging or discharging says: phases, charge, resistance, how it ended, alarms, and a verdict on port,
 * charger and cell. Samples rise in time. Currents may have either sign: a charge is told by the voltage rising under it.
 */
export function judgeCharge(log: readonly ChargeSample[], question: ChargeQuestion): ChargeAnswer {
  if (question.chemistry === undefined) return { ok: false, code: 'chemistry-not-said' };
  if (log.length < LEAST) return { ok: false, code: 'too-short' };
  const most = Math.max(...log.map(({ amps }) => Math.abs(amps)));
  if (most < 1e-4) return { ok: false, code: 'no-current' };
  const chemistry: Chemistry = CHEMISTRIES[question.chemistry];
  const { cells = 1, gaps = [] } = question;
  const highest = Math.max(...log.map(({ volts }) => volts)) / cells;
  // Twice a cell's end voltage is another number of cells, not a fault of the charger.
  if (highest > 1.5 * chemistry.overV || highest < 0.25 * chemistry.overV) return { ok: false, code: 'not-this-chemistry' };
  const turned = isTurned(log);
  const samples = turned ? log.map((sample) => ({ ...sample, amps: -sample.amps })) : log;
  const charge = countCharge(samples, gaps);
  const phases = phasesOf(samples, chemistry, cells);
  const found = {
    direction: charge.inAh >= charge.outAh ? ('charge' as const) : ('discharge' as const),
    phases,
    charge,
    capacityAh: Math.max(charge.inAh, charge.outAh),
    resistance: loggedResistance(samples, gaps),
    end: endOf(samples, phases),
    alarms: alarmsIn(samples, phases, chemistry, cells),
    turned,
  };
  const whole = isWhole(samples, found, chemistry, cells);
  return { ok: true, ...found, whole, verdicts: verdictsOf(samples, { ...found, whole }, { ...question, cells, chemistry }) };
}

/** Whether the greater part of the current runs against the voltage: into a falling or out of a rising one. */
function isTurned(log: readonly ChargeSample[]): boolean {
  let [with_, against] = [0, 0];
  const edge = Math.max(1, Math.floor(log.length / 20));
  for (const sign of [1, -1]) {
    const run = log.filter(({ amps }) => Math.sign(amps) === sign);
    if (run.length < 2 * edge) continue;
    const rise = mean(run.slice(-edge)) - mean(run.slice(0, edge));
    if (rise * sign >= 0) with_ += run.length;
    else against += run.length;
  }
  return against > with_;
}

const mean = (samples: readonly ChargeSample[]): number => samples.reduce((sum, { volts }) => sum + volts, 0) / samples.length;

function endOf(samples: readonly ChargeSample[], phases: readonly Phase[]): ChargeJudged['end'] {
  const at = phases.findLastIndex(({ kind }) => kind === 'constant-voltage');
  const held = phases[at];
  if (!held) return null;
  const mine = samples.slice(held.first, held.last + 1);
  const volts = mine.map(({ volts: own }) => own).toSorted((a, b) => a - b);
  const after = phases[at + 1];
  // The very last may have been taken while it was switching off.
  const last = mine.at(after?.kind === 'rest' && mine.length > 2 ? -2 : -1)!;
  return { amps: last.amps, terminated: after?.kind === 'rest', heldV: volts[volts.length >> 1]! };
}

/** From empty to the end of charging, or from full to empty. */
function isWhole(
  samples: readonly ChargeSample[],
  found: Pick<ChargeJudged, 'direction' | 'end' | 'phases'>,
  chemistry: Chemistry,
  cells: number,
): boolean {
  const first = samples[0]!.volts / cells;
  if (found.direction === 'charge') return found.end?.terminated === true && first < chemistry.gentleBelowV + 0.3;
  const low = Math.min(...samples.map(({ volts }) => volts)) / cells;
  return chemistry.fullV !== null && first > chemistry.fullV - 0.15 && low < chemistry.emptyV + 0.6;
}
