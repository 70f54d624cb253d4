import type { Reckoning } from './reckoning.ts';
import { assertPositive } from './rework-error.ts';

export interface RunTime {
  /** A h of the cell when it was new, and the share of it that is left. */
  readonly capacityAh: number;
  readonly health: number;
  readonly cellV: number;
  /** What the device draws: A from the cell, or W behind a converter of some efficiency. */
  readonly load: { readonly amps: number } | { readonly watts: number; readonly efficiency: number };
}

/** Hours on a full cell: usable charge over mean current. About a tenth of the charge stays below the device's switch-off (common practice, no source). */
export function runTimeHours({ capacityAh, health, cellV, load }: RunTime): Reckoning {
  assertPositive({ capacityAh, health, cellV });
  const amps = 'amps' in load ? load.amps : load.watts / load.efficiency / cellV;
  assertPositive({ amps });
  const full = (capacityAh * health) / amps;
  return {
    value: full * 0.9,
    unit: 'h',
    low: full * 0.7,
    high: full,
    why: 'Devices switch off before a cell is empty, cold cells and high currents give less, and the current changes with use.',
    formula: 'amps' in load ? 't = 0.9 C / I' : 't = 0.9 C / I, I = P / (η V)',
    source: 'Definition of charge; the usable share is common practice, no source',
    range: 'currents up to 1 C, 10 to 40 °C',
    inRange: amps <= capacityAh,
  };
}
