import type { Circuit } from './compile.ts';
import type { Loading } from './devices/bank.ts';

/** A meter at two unknowns of a circuit: a conductance across them, and a current that it drives into the first and takes from the second. */
export interface Probe {
  /** Unknowns; `circuit.size` is ground. */
  readonly red: number;
  readonly black: number;
  readonly siemens: number;
  readonly ampere: number;
  /** Voltage past which the meter no longer drives its current: it falls to nothing within `CLAMP_V` more. */
  readonly complianceV: number;
}

/** Volts past the compliance within which the current of a meter falls to nothing. */
export const CLAMP_V = 0.05;

/**
 * Places of red·red, black·black, red·black, black·red. Two leads that both lie away from ground need a circuit that was compiled for them;
 * undefined places are never asked for then.
 */
export function probePlaces(circuit: Circuit, { red, black }: Pick<Probe, 'red' | 'black'>): number[] {
  const ground = circuit.lu.values.length - 1;
  const own = (unknown: number): number => (unknown === circuit.size ? ground : circuit.diagonal.places[unknown]!);
  if (red === circuit.size || black === circuit.size) return [own(red), own(black), ground, ground];
  const at = circuit.leads.findIndex((pair) => pair.red === red && pair.black === black);
  return [own(red), own(black), circuit.leadEntries.places[2 * at]!, circuit.leadEntries.places[2 * at + 1]!];
}

/** The part of a meter that does not bend. */
export function loadProbe({ red, black, siemens, ampere }: Probe, places: readonly number[], into: Loading, sourceShare: number): void {
  addAcross(into.values, places, siemens);
  into.rhs[red]! += ampere * sourceShare;
  into.rhs[black]! -= ampere * sourceShare;
}

/** Takes the current of a meter back where its leads are further apart than its compliance. */
export function loadClamp({ red, black, ampere, complianceV }: Probe, places: readonly number[], into: Loading): void {
  if (into.x[red]! - into.x[black]! <= complianceV) return;
  const siemens = ampere / CLAMP_V;
  addAcross(into.values, places, siemens);
  into.rhs[red]! += siemens * complianceV;
  into.rhs[black]! -= siemens * complianceV;
}

function addAcross(values: Float64Array, places: readonly number[], siemens: number): void {
  values[places[0]!]! += siemens;
  values[places[1]!]! += siemens;
  values[places[2]!]! -= siemens;
  values[places[3]!]! -= siemens;
}
