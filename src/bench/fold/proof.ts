import type { Apply } from './fold.ts';
import { onItem } from './fold.ts';
import { backToBench } from './work.ts';

/** The last outcome of a step counts. A step that fails takes a unit out of "proved" and its grade with it. */
export const proofStepDone: Apply<'proof-step-done'> = (fold, event) =>
  onItem(fold, event, (item) => {
    const { step, outcome, reason, minutes } = event.body;
    item.proof.set(step, { outcome, reason, eventId: event.id });
    item.minutes += minutes;
    if (outcome !== 'fail') return;
    item.grade = null;
    backToBench(item);
  });

/** A test that gives numbers; it stands beside the proof and decides no step by itself. */
export const testDone: Apply<'test-done'> = (fold, event) =>
  onItem(fold, event, (item) => {
    const { test, verdict, text, values, known_good: knownGood, minutes } = event.body;
    item.tests.push({ test, verdict, text, values, knownGood, beforeWork: false, eventId: event.id, at: event.at });
    item.minutes += minutes;
  });

/**
 * The grade closes the proof: a unit on the bench that is graded A to D and has no failing step is proved. Whether all
 * steps were done is asked when the grade is recorded, by the rules; the fold does not know the steps of the day.
 */
export const graded: Apply<'graded'> = (fold, event) =>
  onItem(fold, event, (item) => {
    const { grade, scale, text, judged = [] } = event.body;
    item.grade = { grade, scale, text, judged };
    const failing = [...item.proof.values()].some((step) => step.outcome === 'fail');
    const atHand = item.status === 'bought' || item.status === 'on-the-bench';
    if (item.kind === 'unit' && grade !== 'parts' && atHand && item.proof.size > 0 && !failing) item.status = 'proved';
  });
