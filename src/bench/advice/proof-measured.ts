import type { TestName } from '../events/index.ts';
import { valueWords } from '../report/value-words.ts';
import type { TestResult } from '../state.ts';

/** The steps of the proof that a test belongs to, by their ids. A log of heat is of the work, not of the proof. */
const STEPS: readonly (readonly [TestName, RegExp])[] = [
  ['charge-log', /^charges-safely$/],
  ['sound', /^works\.(sound|speaker|plays?)\b/],
  ['display', /^works\.(picture|display|screen)\b/],
];

/** The tests that measure something of a step. */
export const testsFor = (step: string): TestName[] => STEPS.filter(([, pattern]) => pattern.test(step)).map(([test]) => test);

/** What the last test of each kind since the work says of a step: its verdict in words, then its numbers. */
export function measuredFor(step: string, tests: readonly TestResult[]): string[] {
  return testsFor(step).flatMap((name) => {
    const last = tests.findLast(({ test, beforeWork }) => test === name && !beforeWork);
    if (!last) return [];
    return [...(last.text === '' ? [] : [last.text]), ...last.values.map(valueWords)];
  });
}
