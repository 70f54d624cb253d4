import type { Role } from './components.ts';
import type { CircuitFaultKind } from './fault.ts';

/**
 * Chance of each kind of fault by what the component is, on a unit that is sold as faulty. Common practice, no source: what a bench has learned goes
 * over it. A kind that is absent does not happen to that role. Contacts count once a contact, joints once a pin.
 */
export const FAULT_RATES: Readonly<Record<Role, Partial<Record<CircuitFaultKind, number>>>> = {
  resistor: { open: 4e-4, 'drifted-up': 2e-4, 'drifted-down': 3e-5, missing: 3e-4 },
  capacitor: { short: 2e-3, leaky: 1.2e-3, open: 4e-4, missing: 5e-4 },
  coil: { open: 2e-3, missing: 4e-4 },
  bead: { open: 2e-3, missing: 3e-4 },
  fuse: { open: 0.02, missing: 5e-4 },
  diode: { open: 8e-4, short: 2e-3, leaky: 8e-4, reversed: 5e-5, missing: 3e-4 },
  transistor: { short: 2.5e-3, leaky: 1e-3, dead: 1.5e-3, reversed: 5e-5, missing: 3e-4, 'open-joint': 5e-4 },
  regulator: { dead: 0.012, 'supply-shorted': 6e-3, 'drifted-up': 1e-3, 'drifted-down': 2e-3, missing: 3e-4, 'open-joint': 5e-4 },
  charger: { dead: 0.015, 'supply-shorted': 5e-3, missing: 3e-4, 'open-joint': 5e-4 },
  battery: { open: 0.02, 'drifted-down': 0.05, missing: 0.01 },
  chip: { dead: 6e-3, 'supply-shorted': 6e-3, 'drifted-up': 2e-3, missing: 2e-4, 'open-joint': 8e-4 },
  speaker: { open: 0.01, missing: 2e-3 },
  contact: { open: 5e-3, 'dirty-contact': 0.01, missing: 1e-3 },
  key: { short: 2e-3, leaky: 3e-3, open: 4e-3, 'dirty-contact': 0.012, missing: 5e-4 },
  source: {},
  // What hangs on a rail and is not drawn: some eight parts, of which only what they do to the rail is known.
  region: { 'supply-shorted': 0.015, leaky: 0.008 },
};

/** Chance of a bridge of solder for each pair of neighbouring pads of different nets, and of a leak for each such pair under dried liquid. */
export const BRIDGE_RATE = 1.5e-4;
export const LIQUID_LEAK_RATE = 0.02;

/** Resistances and factors that stand for each kind, Ω: typical, common practice, no source. */
export const FAULT_VALUES = {
  shortOhm: 0.5,
  bridgeOhm: 0.05,
  capacitorLeakOhm: 470,
  junctionLeakOhm: 3300,
  keyLeakOhm: 8200,
  liquidOhm: 15e3,
  supplyShortOhm: 1.5,
  drift: 2,
  setPointDrift: 1.2,
  flatCell: 0.75,
  /** Of a contact: 50 mΩ become 20 Ω. */
  dirtyFactor: 400,
} as const;

/**
 * Standard deviation of the logarithm of those that differ from board to board: of 470 Ω and 1.5, nineteen in twenty lie between 25 Ω and 9 kΩ. Common
 * practice, no source.
 */
export const FAULT_SPREADS: Partial<Record<keyof typeof FAULT_VALUES, number>> = {
  shortOhm: 0.8,
  capacitorLeakOhm: 1.5,
  junctionLeakOhm: 1.5,
  keyLeakOhm: 1.2,
  liquidOhm: 1.5,
  supplyShortOhm: 1,
  dirtyFactor: 1.2,
};

/** A resistance that stands for a fault. */
export type OhmOf = Extract<keyof typeof FAULT_VALUES, `${string}Ohm`>;

/** How a value of the table spreads, as a change has it. */
export function spreadOf(name: keyof typeof FAULT_VALUES): { readonly spread?: number } {
  const spread = FAULT_SPREADS[name];
  return spread === undefined ? {} : { spread };
}

export const ohmOf = (name: OhmOf): { readonly ohm: number; readonly spread?: number } => ({ ohm: FAULT_VALUES[name], ...spreadOf(name) });
