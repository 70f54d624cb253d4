import type { Claim } from '../events/index.ts';

/** Where words stand in a text: from the first character to behind the last. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** A claim as it was read out of a text. */
export interface ReadClaim {
  readonly claim: Claim;
  /** Of several units in one lot which one it is of, from 1; null for all of them. */
  readonly unit: number | null;
  /** The words that it was read from. */
  readonly span: Span;
  readonly words: string;
  /** Name of the rule that read it, for the person to see. */
  readonly rule: string;
  /** Said with a doubt, or of times past. */
  readonly hedged: boolean;
  /** Another claim of the text says the opposite. */
  readonly contradicted: boolean;
  /** Whether it counts before the person has looked: doubtful praise and contradicted praise do not. */
  readonly counts: boolean;
}

/** Something that was noticed and is no claim. */
export interface Remark {
  readonly code: 'denied' | 'not-in-model' | 'condition' | 'as-is' | 'part-untested';
  readonly span: Span;
  readonly words: string;
}

export interface ListingReading {
  readonly claims: readonly ReadClaim[];
  readonly remarks: readonly Remark[];
  /** How many units the text speaks of; 1 when it does not say. */
  readonly units: number;
}

/** What of a model the reader has to know. */
export interface ReadableModel {
  readonly functions: readonly { readonly id: string; readonly name: string }[];
  readonly blocks: readonly { readonly id: string; readonly name: string }[];
}

/** Words that the person taught, and the claim that they stand for. */
export interface TaughtWords {
  readonly words: string;
  readonly claim: Claim;
}
