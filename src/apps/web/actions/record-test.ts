import type { Body } from '../../../bench/events/index.ts';
import type { ChargeEvidence, TestSaid } from '../../../bench/logs/index.ts';
import { TEST_NAMES } from '../../../bench/report/test-names.ts';
import type { Draft, Gesture } from './gesture.ts';

export interface TestAnswer {
  readonly itemId: string;
  readonly test: Body<'test-done'>['test'];
  readonly said: TestSaid;
  readonly knownGood?: boolean;
  readonly minutes: number;
  /** What the diagnosis is to go by besides. */
  readonly evidence?: readonly ChargeEvidence[];
}

/** What a test measured, with the trials and findings that follow from it. */
export const recordTest = ({ itemId, test, said, knownGood = false, minutes, evidence = [] }: TestAnswer): Gesture => ({
  said: `${TEST_NAMES[test]}: ${said.verdict.replaceAll('-', ' ')}`,
  drafts: [
    {
      kind: 'test-done',
      body: { item_id: itemId, test, verdict: said.verdict, text: said.text, values: [...said.values], known_good: knownGood, minutes },
    },
    ...evidence.map((each) => draftOf(itemId, each)),
  ],
});

const draftOf = (itemId: string, evidence: ChargeEvidence): Draft =>
  evidence.kind === 'trial'
    ? { kind: 'trial-done', body: { item_id: itemId, function: evidence.function, outcome: evidence.outcome } }
    : { kind: 'finding-noted', body: { item_id: itemId, place: evidence.place, sees: evidence.sees, text: 'by its log of a charge' } };
