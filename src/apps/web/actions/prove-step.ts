import type { Body } from '../../../bench/events/index.ts';
import type { Gesture } from './gesture.ts';

export interface ProofAnswer {
  readonly itemId: string;
  readonly step: string;
  readonly stepName: string;
  readonly outcome: Body<'proof-step-done'>['outcome'];
  readonly reason: string;
  readonly minutes: number;
}

const WORDS = { pass: 'passed', fail: 'failed', 'signed-off': 'signed off' } as const;

/** One step of the proof passed, failed, or was signed off with a reason. */
export const proveStep = (answer: ProofAnswer): Gesture => ({
  said: `${answer.stepName}: ${WORDS[answer.outcome]}`,
  drafts: [
    {
      kind: 'proof-step-done',
      body: { item_id: answer.itemId, step: answer.step, outcome: answer.outcome, reason: answer.reason, minutes: answer.minutes },
    },
  ],
});
