import type { TestName } from '../events/index.ts';
import { valueWords } from '../report/value-words.ts';
import type { TestResult } from '../state.ts';

/** The steps of the proof that a test belongs to, by their ids and names. A log of heat is of the work, not of the proof. */
const STEPS: Readonly<Partial<Record<TestName, RegExp>>> = {
  'charge-log': /^charges safely\b/i,
  sound: /\b(sound|speaker)\b/i,
  display: /\b(picture|display|screen)\b/i,
};

/** What the last test of each kind since the work says of a step: its verdict in words, then its numbers. */
export function measuredFor(step: { readonly id: string; readonly name: string }, tests: readonly TestResult[]): string[] {
  const words = `${step.id} ${step.name}`.replaceAll('-', ' ');
  const fresh = new Map(tests.filter(({ beforeWork }) => !beforeWork).map((test) => [test.test, test]));
  return [...fresh.values()].flatMap((test) =>
    STEPS[test.test]?.test(words) ? [...(test.text === '' ? [] : [test.text]), ...test.values.map(valueWords)] : [],
  );
}
