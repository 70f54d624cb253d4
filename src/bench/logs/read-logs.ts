import { readLog, type ReadLog, type Role, type SplitRows } from '../../core/rework/index.ts';

/** Columns of a log as the person corrected them, by place from 0. */
export type ColumnsSaid = Partial<Readonly<Record<Role, number>>>;

export const CHARGE_ROLES = ['time', 'volts', 'amps'] as const;
export const HEAT_ROLES = ['time', 'celsius'] as const;

export type ChargeLog = ReadLog<(typeof CHARGE_ROLES)[number]>;
export type HeatLog = ReadLog<(typeof HEAT_ROLES)[number]>;

/** A log of charging or discharging from any meter. */
export const readChargeLog = (text: string, split: SplitRows, columns: ColumnsSaid = {}): ChargeLog =>
  readLog(text, { wanted: CHARGE_ROLES, split, columns });

/** A log of temperatures from any thermometer. */
export const readHeatLog = (text: string, split: SplitRows, columns: ColumnsSaid = {}): HeatLog =>
  readLog(text, { wanted: HEAT_ROLES, split, columns });
