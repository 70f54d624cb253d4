import type { BoardPoint } from '../boards/board-knowledge.ts';
import type { AnyEvent, EventOf, Kind } from '../events/index.ts';
import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import type { ProofView } from '../views/index.ts';

/** Every code with which the rules of the job refuse an event. Words for what to do next are made from it by the apps. */
export const RULE_CODES = [
  'unknown-item',
  'unknown-bag',
  'unknown-order',
  'unknown-listing',
  'unknown-model',
  'unknown-function',
  'unknown-accessory',
  'unknown-point',
  'off-the-board',
  'unknown-remedy',
  'unknown-slot',
  'unknown-step',
  'unknown-fasteners',
  'unknown-event',
  'id-taken',
  'wrong-mode',
  'item-gone',
  'not-sold',
  'still-inside',
  'proof-incomplete',
  'reason-missing',
  'not-enough-parts',
  'already-arrived',
  'order-cancelled',
  'more-than-ordered',
  'refund-too-large',
  'already-corrected',
  'listing-closed',
  'currency-fixed',
  'rate-not-one',
  'rate-missing',
  'amount-too-large',
  'not-a-unit',
  'not-an-assembly',
  'slot-missing',
  'slot-occupied',
  'slot-empty',
  'does-not-fit',
  'not-there',
  'nothing-moves',
  'bands-out-of-order',
  'figure-missing',
  'unknown-fact',
  'not-open',
  'too-many-foreign',
  'model-not-grown',
  'fact-does-not-fit',
  'unknown-part',
  'unknown-photo',
] as const;
export type RuleCode = (typeof RULE_CODES)[number];

/** Why an event is refused: the code, the field, and what is wrong as a clause. */
export interface Objection {
  readonly code: RuleCode;
  readonly field: string;
  readonly message: string;
}

/** What the rules look at: the state as it stands before the event. */
export interface RuleContext {
  readonly state: Readonly<BenchState>;
  readonly models: ReadonlyMap<string, Model>;
  /** The steps that a unit must pass before it leaves, with what was done of them. */
  readonly proofSteps: (itemId: string) => ProofView;
  readonly eventById: (id: string) => AnyEvent | undefined;
  /** Points of a model's circuit that its file does not name, as far as they are known. */
  readonly boardPoints?: (model: Model) => readonly Pick<BoardPoint, 'id' | 'name' | 'mode'>[];
}

export type Rule<K extends Kind> = (context: RuleContext, event: EventOf<K>) => Objection | null;

export const refuse = (code: RuleCode, field: string, message: string): Objection => ({ code, field, message });

/** The first objection of several questions, asked in order. */
export function firstOf(...questions: readonly (() => Objection | null)[]): Objection | null {
  for (const question of questions) {
    const objection = question();
    if (objection) return objection;
  }
  return null;
}
