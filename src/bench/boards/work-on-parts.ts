import type { CircuitFaultKind, Role } from '../../core/circuit/index.ts';
import type { Caution, ModelFile } from '../models/index.ts';

type Remedy = ModelFile['remedies'][number];

/** A kind of work that can be done to a part of any board, or between two of its nets. */
export interface WorkOnParts {
  readonly verb: 'replace' | 'resolder' | 'clean' | 'wire' | 'clear' | 'wash' | 'trace';
  readonly kind: Remedy['kind'];
  /** Chance that it removes a fault of each kind. */
  readonly mends: Readonly<Partial<Record<CircuitFaultKind, number>>>;
  readonly cautions: readonly Caution[];
  readonly how: string;
}

const SOLDERING: readonly Caution[] = ['hot-tool', 'fumes', 'esd'];

/** Work on the parts of a board. Chances: common practice, no source. */
export const WORK: readonly WorkOnParts[] = [
  {
    verb: 'replace',
    kind: 'replace',
    mends: {
      open: 0.93,
      short: 0.93,
      leaky: 0.93,
      'drifted-up': 0.93,
      'drifted-down': 0.93,
      missing: 0.95,
      reversed: 0.95,
      dead: 0.88,
      'supply-shorted': 0.88,
      'dirty-contact': 0.93,
      'open-joint': 0.93,
    },
    cautions: SOLDERING,
    how: 'Look at the old one under the lens first: which way round it sits, and what is written on it. Flux, little heat, then under the lens for bridges.',
  },
  {
    verb: 'resolder',
    kind: 'reflow',
    mends: { 'open-joint': 0.82, open: 0.05 },
    cautions: SOLDERING,
    how: 'Fresh flux and a little fresh solder, joint by joint, no more than three seconds on each; then under the lens for bridges.',
  },
  {
    verb: 'clean',
    kind: 'clean',
    mends: { 'dirty-contact': 0.8, leaky: 0.15 },
    cautions: ['solvent', 'esd'],
    how: 'Alcohol on a lint-free cloth or a soft brush, work the contact some times, let it dry before power.',
  },
  {
    verb: 'wire',
    kind: 'bridge-with-wire',
    mends: { 'open-joint': 0.88 },
    cautions: SOLDERING,
    how: 'Find both ends with the meter in continuity. A wire that carries the current, fixed so that nothing pulls at the pad.',
  },
  {
    verb: 'clear',
    kind: 'reflow',
    mends: { bridge: 0.93 },
    cautions: SOLDERING,
    how: 'Flux, then a clean tip or braid drawn away from the pads; measure between the two before power.',
  },
  {
    verb: 'wash',
    kind: 'clean',
    mends: { 'liquid-leak': 0.75 },
    cautions: ['solvent', 'esd'],
    how: 'Soft brush and alcohol between the pads, rinse with more, let it dry for an hour.',
  },
  {
    verb: 'trace',
    kind: 'replace',
    mends: { short: 0.85, 'supply-shorted': 0.75, leaky: 0.4 },
    cautions: [...SOLDERING, 'solvent'],
    how: 'Cell out. A bench supply at half a volt and 1 A on the net: the part that warms is it, a drop of alcohol dries there first. Replace that one, then measure to ground before power.',
  },
];

/** Minutes, chance to ruin the unit, and price as a share of that of a working unit, by what is worked on. Common practice, no source. */
interface Effort {
  readonly minutes: number;
  readonly risk: number;
  readonly price: number;
}
const SMALL: Effort = { minutes: 8, risk: 0.005, price: 0.0015 };
const CHIP: Effort = { minutes: 25, risk: 0.03, price: 0.03 };
const CONNECTOR: Effort = { minutes: 30, risk: 0.04, price: 0.03 };
const REPLACING: Readonly<Record<Role, Effort | null>> = {
  resistor: SMALL,
  capacitor: SMALL,
  bead: SMALL,
  coil: { minutes: 12, risk: 0.01, price: 0.008 },
  fuse: { minutes: 8, risk: 0.01, price: 0.004 },
  diode: { minutes: 8, risk: 0.007, price: 0.003 },
  transistor: { minutes: 10, risk: 0.01, price: 0.006 },
  regulator: { minutes: 20, risk: 0.025, price: 0.02 },
  charger: CHIP,
  chip: CHIP,
  contact: CONNECTOR,
  speaker: { minutes: 10, risk: 0.005, price: 0.03 },
  key: null,
  battery: null,
  source: null,
  region: null,
};
const BY_VERB: Readonly<Record<Exclude<WorkOnParts['verb'], 'replace'>, Effort>> = {
  resolder: { minutes: 7, risk: 0.01, price: 0.0014 },
  clean: { minutes: 6, risk: 0.002, price: 0.002 },
  wire: { minutes: 14, risk: 0.015, price: 0.001 },
  clear: { minutes: 7, risk: 0.008, price: 0.0014 },
  wash: { minutes: 15, risk: 0.01, price: 0.003 },
  trace: { minutes: 24, risk: 0.03, price: 0.004 },
};

/** What a piece of work on a part of that role costs; null where it is not done to such a part. */
export function effortOf(verb: WorkOnParts['verb'], role: Role): Effort | null {
  if (verb === 'replace') return REPLACING[role];
  if (verb === 'clean') return role === 'contact' || role === 'key' ? BY_VERB.clean : null;
  return role === 'source' || role === 'battery' ? null : BY_VERB[verb];
}

/** Recipes of work on parts, by its verb; what is replaced has one by its role. */
const RECIPE_BY_VERB: Readonly<Partial<Record<WorkOnParts['verb'], string>>> = {
  resolder: 'refresh-joint',
  clean: 'clean-contacts',
  wire: 'repair-track-wire',
  clear: 'refresh-joint',
  wash: 'clean-after-liquid',
};
const RECIPE_BY_ROLE: Readonly<Partial<Record<Role, string>>> = {
  resistor: 'replace-two-terminal',
  capacitor: 'replace-two-terminal',
  bead: 'replace-two-terminal',
  coil: 'replace-two-terminal',
  fuse: 'replace-two-terminal',
  diode: 'replace-two-terminal',
  transistor: 'replace-fine-pitch',
  regulator: 'replace-fine-pitch',
  charger: 'replace-fine-pitch',
  chip: 'replace-fine-pitch',
  contact: 'replace-connector',
  speaker: 'replace-speaker',
};

/** The recipe of a piece of work on a part of that role; undefined where there is none. */
export const recipeOfWork = (verb: WorkOnParts['verb'], role: Role | null): string | undefined =>
  verb === 'replace' ? (role === null ? undefined : RECIPE_BY_ROLE[role]) : RECIPE_BY_VERB[verb];
