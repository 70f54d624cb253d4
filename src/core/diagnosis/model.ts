/**
 * What diagnosis needs to know of a device. Chances are 0..1, time is minutes, money is minor units of one currency.
 * The bench makes it from a model file; nothing here knows of files.
 */
export interface DeviceModel {
  readonly faults: readonly Fault[];
  readonly functions: readonly DeviceFunction[];
  /** Known-good accessories and the block each stands in for while a function is tried. */
  readonly accessories: readonly { readonly id: string; readonly block: string }[];
  readonly points: readonly TestPoint[];
  readonly checks: readonly Check[];
  readonly remedies: readonly Remedy[];
  /** Chance that a unit sold as faulty suffers from something that is not in `faults`. */
  readonly unknownRate: number;
  /** Of a device whose parts are known by name: how many there are, so that a slip of the eye falls on any one of them that seldom. */
  readonly parts?: number;
}

export interface Fault {
  readonly id: string;
  readonly block: string;
  /** Chance that a unit sold as faulty has it. */
  readonly rate: number;
  /** Given the fault and a function that needs its block: chances of each way to behave; they sum to 1. */
  readonly behaves: { readonly works: number; readonly fails: number; readonly 'comes-and-goes': number };
  /** Chance that each kind of finding is seen when one looks at the block and the fault is there. */
  readonly seen: Readonly<Record<string, number>>;
  /** What the fault does to readings, by point; points that are absent keep their reference. */
  readonly shifts: Readonly<Record<string, Shift>>;
  /** The part that it is of, where parts are known by name. */
  readonly part?: string;
  /** Chance that each function works with it, as its circuit says, which then goes before the blocks; functions that are absent go by blocks. */
  readonly works?: Readonly<Record<string, number>>;
}

/** `low`/`high`: well below/above the reference; `zero`: near nothing; `open`: OL on ohms and diode, near zero on volts and amps; `any`: anything. */
export type Shift = 'low' | 'high' | 'zero' | 'open' | 'any';

export interface DeviceFunction {
  readonly id: string;
  /** All needs must be met; a need is met by one healthy block of its list. */
  readonly needs: readonly (readonly string[])[];
}

export interface TestPoint {
  readonly id: string;
  readonly block: string;
  readonly mode: 'volts' | 'ohms' | 'diode' | 'amps';
  /** Pooled over known-good boards; null where none was measured yet. A null mean says that good boards read OL. */
  readonly reference: { readonly mean: number | null; readonly spread: number; readonly boards: number } | null;
}

export type Stage = 'closed' | 'open' | 'board-out';

export type Check = { readonly id: string; readonly minutes: number; readonly stage: Stage } & (
  | { readonly kind: 'try'; readonly function: string; readonly with: readonly string[] }
  | { readonly kind: 'look'; readonly block: string }
  | { readonly kind: 'measure'; readonly point: string }
);

export interface Remedy {
  readonly id: string;
  /** Chance that it removes each fault when that fault is there. */
  readonly mends: Readonly<Record<string, number>>;
  readonly minutes: number;
  readonly partsCostMinor: number;
  /** Chance that the work ruins the unit. */
  readonly risk: number;
  readonly stage: Stage;
}

export type Behaviour = 'works' | 'fails' | 'comes-and-goes';

/** What was said, tried, seen and measured, and what was done, oldest first: each counts for the state at its time. */
export type Evidence = { readonly id: string } & (
  | { readonly kind: 'claim'; readonly function: string; readonly says: Behaviour; readonly honesty: number }
  | { readonly kind: 'claim-place'; readonly block: string; readonly sees: string; readonly honesty: number }
  | { readonly kind: 'trial'; readonly function: string; readonly outcome: Behaviour; readonly with: readonly string[] }
  | { readonly kind: 'finding'; readonly block: string; readonly sees: string; /** Of one part of the block */ readonly part?: string }
  | { readonly kind: 'reading'; readonly point: string; /** null is OL */ readonly value: number | null }
  /** It failed a test at length that a unit which is well passes; the trial of it tells where the trouble may be. */
  | { readonly kind: 'not-well' }
  | { readonly kind: 'remedy'; readonly remedy: string; readonly outcome: 'mended' | 'not-mended' | 'made-worse' | 'not-tried-yet' }
  /** The blocks now come from another assembly, whose own faults have these chances; an empty slot has a null incoming. */
  | { readonly kind: 'transplant'; readonly blocks: readonly string[]; readonly incoming: Readonly<Record<string, number>> | null }
);

/** What a decision is worth, in minor units of the bench's currency. */
export interface Stakes {
  /** What the unit brings when it works, after fees and postage. */
  readonly workingMinor: number;
  /** What it brings as it is, when given up: sold for parts, or its parts used. */
  readonly asIsMinor: number;
  readonly hourMinor: number;
  /** Minutes to get from each stage of opening to a deeper one, and closed again at the end. */
  readonly openingMinutes: { readonly open: number; readonly 'board-out': number };
  readonly stage: Stage;
}
