import { assertPositive } from './rework-error.ts';

/** Limits of special provision 188 of ADR and IMDG, and of IATA packing instructions 966 and 967, as a summary of 2023 has them. */
export const CELL_LIMITS = { cellWh: 20, batteryWh: 100, packageKg: 5, dropM: 1.2 } as const;

export interface CellShipping {
  readonly wattHours: number;
  /** UN 3481: with or in equipment; UN 3480: alone. */
  readonly un: 3480 | 3481;
  /** Small enough for the easier rules; otherwise it goes as dangerous goods of class 9. */
  readonly small: boolean;
  /** Swollen, wet, leaking or hot cells are not sent and not charged; only licensed carriers take them, and never by air. */
  readonly mayBeSent: boolean;
}

/** How a lithium cell or battery counts when it is sent: Wh = V × Ah. Rules change; the carrier's own come first. */
export function cellShipping(volts: number, capacityAh: number, cells: number, where: 'in-device' | 'alone', sound: boolean): CellShipping {
  assertPositive({ volts, capacityAh, cells });
  const wattHours = volts * capacityAh;
  const limit = cells > 1 ? CELL_LIMITS.batteryWh : CELL_LIMITS.cellWh;
  return { wattHours, un: where === 'in-device' ? 3481 : 3480, small: wattHours <= limit, mayBeSent: sound };
}
