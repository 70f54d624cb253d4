import type { CircuitNeed, CircuitSpec } from './circuit-spec.ts';

/** What is known of a board in its power states. Null where it has no value: an open reading, or a state that could not be computed. */
export interface CircuitLook {
  volts(red: string, black: string, state: string): number | null;
  /** With nothing feeding the board. */
  ohms(red: string, black: string, state: string): number | null;
  /** What a supply gives into the board, A; negative while it is charged. */
  amps(supply: string, state: string): number | null;
  /** Whether the part of a reference is free of faults that keep it from doing its work. */
  partWell(ref: string): boolean;
}

/**
 * Whether a need of a function holds on a board. An open resistance meets only a need without `max`; a voltage or current that is not known
 * meets none.
 */
export function needHolds(need: CircuitNeed, functionState: string, { rails }: Pick<CircuitSpec, 'rails'>, look: CircuitLook): boolean {
  if ('part' in need) return look.partWell(need.part);
  if ('rail' in need) {
    const nominal = rails[need.rail]!;
    const limits = { min: nominal * (1 - need.within), max: nominal * (1 + need.within) };
    return isWithin(look.volts(need.rail, '0', need.state ?? functionState), limits);
  }
  if ('volts' in need) return isWithin(look.volts(need.volts, need.to ?? '0', need.state ?? functionState), need);
  if ('amps' in need) return isWithin(look.amps(need.amps, need.state ?? functionState), need);
  const ohm = look.ohms(need.ohms, need.to ?? '0', need.state ?? 'off');
  return ohm === null ? need.max === undefined : isWithin(ohm, need);
}

const isWithin = (
  value: number | null,
  { min = -Infinity, max = Infinity }: { min?: number | undefined; max?: number | undefined },
): boolean => value !== null && value >= min && value <= max;
