/** What a cell must be treated as. It is said by the person from the label, never guessed from a voltage. All V are of one cell. */
export interface Chemistry {
  readonly name: string;
  /** Charging ends at this voltage; null where it ends by a fall of the voltage or by heat. */
  readonly fullV: number | null;
  /** How far off the end of charging may be. */
  readonly toleranceV: number;
  /** Above it the cell is in danger. */
  readonly overV: number;
  /** Below it chargers begin gently. Chargers differ (2.5 to 3.0 V): a setting. */
  readonly gentleBelowV: number;
  /** Found below it, the cell is recycled and not revived. */
  readonly reviveNotBelowV: number;
  /** Where a discharge test ends. */
  readonly emptyV: number;
}

/**
 * Lithium figures: 4.20 V, 0.05 C at the end and 2.5 V from the data sheet of an 18650 cell citing IEC 61960; gentle charging
 * below 2.5 to 3.0 V from data sheets of charging chips; protectors cut at 4.25 to 4.35 V. 4.35 V and iron-phosphate cells
 * exist; their figures, the tolerance of 0.05 V and those of NiMH (IEC 61951-2) are from memory.
 */
export const CHEMISTRIES = {
  'li-ion-4.20': {
    name: 'Lithium ion, 4.20 V',
    fullV: 4.2,
    toleranceV: 0.05,
    overV: 4.25,
    gentleBelowV: 3.0,
    reviveNotBelowV: 2.5,
    emptyV: 2.5,
  },
  'li-ion-4.35': {
    name: 'Lithium ion, 4.35 V',
    fullV: 4.35,
    toleranceV: 0.05,
    overV: 4.4,
    gentleBelowV: 3.0,
    reviveNotBelowV: 2.5,
    emptyV: 2.5,
  },
  'li-fe-po4': {
    name: 'Lithium iron phosphate, 3.65 V',
    fullV: 3.65,
    toleranceV: 0.05,
    overV: 3.75,
    gentleBelowV: 2.5,
    reviveNotBelowV: 2.0,
    emptyV: 2.0,
  },
  nimh: { name: 'Nickel metal hydride', fullV: null, toleranceV: 0, overV: 1.6, gentleBelowV: 0.9, reviveNotBelowV: 0.4, emptyV: 1.0 },
} as const satisfies Readonly<Record<string, Chemistry>>;
export type ChemistryId = keyof typeof CHEMISTRIES;
