import type { ChargeSample } from '../../src/core/rework/index.ts';

/**
 * A cell that is charged or emptied step by step: open-circuit voltage over its state of charge, a resistance, and a charger
 * with a gentle start, a constant current, a constant voltage and an end. Made up, independent of what judges its logs.
 */
export interface Charging {
  readonly capacityAh: number;
  readonly amps: number;
  readonly fullV: number;
  /** The current at which the charger stops; 0 never stops it. */
  readonly endA: number;
  readonly ohms: number;
  readonly gentleA?: number;
  readonly startSoc?: number;
  readonly stepS?: number;
  /** Minutes of rest that are logged after the end. */
  readonly restMinutes?: number;
  /** A current that the charger never goes below: a leak, or a termination that does not work. */
  readonly leakA?: number;
  readonly minutes?: number;
}

/** V of a lithium cell without current; below empty it falls steeply. */
export function openVolts(soc: number): number {
  if (soc < 0) return 3.0 + 25 * soc;
  return 3.0 + 0.55 * (1 - Math.exp(-14 * soc)) + 0.62 * soc + 0.03 * Math.max(0, soc - 0.9) * 10;
}

export function chargeOf(charging: Charging): ChargeSample[] {
  const {
    capacityAh,
    amps,
    fullV,
    endA,
    ohms,
    gentleA = amps,
    startSoc = 0,
    stepS = 10,
    restMinutes = 5,
    leakA = 0,
    minutes = 600,
  } = charging;
  const log: ChargeSample[] = [];
  let soc = startSoc;
  let ended = -1;
  for (let seconds = 0; seconds < minutes * 60; seconds += stepS) {
    const open = openVolts(soc);
    const limit = open < 3.0 ? gentleA : amps;
    const held = (fullV - open) / ohms;
    let current = Math.max(leakA, Math.min(limit, held));
    if (ended < 0 && current <= endA && held < limit) ended = seconds;
    if (ended >= 0) current = 0;
    if (ended >= 0 && seconds - ended > restMinutes * 60) break;
    log.push({ seconds, volts: leakA > 0 && held < leakA ? fullV : open + current * ohms, amps: current });
    soc += (Math.min(current, Math.max(0, held)) * stepS) / 3600 / capacityAh;
  }
  return log;
}

/** A full cell emptied by a current that is stepped up for a second every so often, down to a voltage. */
export function dischargeOf(capacityAh: number, amps: number, ohms: number, emptyV: number, pulseA = amps): ChargeSample[] {
  const log: ChargeSample[] = [];
  let soc = 1;
  for (let seconds = 0; ; seconds++) {
    const current = seconds % 600 === 300 ? pulseA : amps;
    const volts = openVolts(soc) - current * ohms;
    if (volts < emptyV) return log;
    log.push({ seconds, volts, amps: -current });
    soc -= current / 3600 / capacityAh;
  }
}
