import { expect, it } from 'vitest';
import { recordTest } from './record-test.ts';
import { recordable } from './testing/recordable.ts';

it('a test goes in with the trials and findings that the person left in, in one gesture', () => {
  const gesture = recordTest({
    itemId: 'unit-1',
    test: 'charge-log',
    said: { verdict: 'suspect', text: 'Cell suspect: worn.', values: [{ name: 'Capacity', value: 0.9, unit: 'A h' }] },
    minutes: 3,
    evidence: [
      { kind: 'trial', function: 'charges', name: 'Charges', outcome: 'works' },
      { kind: 'finding', place: 'battery', name: 'Cell', sees: 'worn' },
    ],
  });
  expect(gesture.said).toBe('Log of a charge: suspect');
  expect(recordable(gesture)).toMatchObject([
    { kind: 'test-done', body: { test: 'charge-log', verdict: 'suspect', known_good: false, minutes: 3 } },
    { kind: 'trial-done', body: { function: 'charges', outcome: 'works' } },
    { kind: 'finding-noted', body: { place: 'battery', sees: 'worn' } },
  ]);
});
