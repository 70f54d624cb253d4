import { expect, test } from 'vitest';
import { smallModels } from '../../../bench/testing/small-model.ts';
import { randomStream } from '../../../core/numeric/index.ts';
import { HiddenTruth } from './hidden-truth.ts';

const LAMP = smallModels().get('lamp-1')!;

/** The first unit, over many seeds, that has exactly this fault. */
function unitWith(faultId: string): HiddenTruth {
  for (let seed = 0; seed < 2000; seed++) {
    const truth = new HiddenTruth(randomStream(seed));
    truth.addUnit('u', LAMP);
    if (truth.flawsOf('u').length === 1 && truth.flawsOf('u')[0]!.fault.id === faultId) return truth;
  }
  throw new Error(`no seed draws a lone ${faultId}`);
}

test('a unit that is sold as faulty has one or two faults', () => {
  for (let seed = 0; seed < 200; seed++) {
    const truth = new HiddenTruth(randomStream(seed));
    truth.addUnit('u', LAMP);
    expect([1, 2]).toContain(truth.flawsOf('u').length);
  }
});

test('a dead driver stops both functions, and a known-good cell does not help', () => {
  const truth = unitWith('driver-dead');
  expect(truth.tryFunction('u', 'light', [])).not.toBe('works');
  expect(truth.tryFunction('u', 'light', ['good-cell'])).toBe(truth.tryFunction('u', 'light', []));
});

test('a flat cell is stood in for by a known-good one, and reads low', () => {
  const truth = unitWith('cell-flat');
  expect(truth.tryFunction('u', 'power', ['good-cell'])).toBe('works');
  expect(truth.measure('u', 'cell-v')!).toBeLessThan(2.5);
});

test('a function behaves the same each time it is tried, and a place looks the same', () => {
  const truth = unitWith('switch-dirty');
  const tries = Array.from({ length: 20 }, () => truth.tryFunction('u', 'power', []));
  expect(new Set(tries).size).toBe(1);
  const looks = Array.from({ length: 20 }, () => truth.look('u', 'switch'));
  expect(new Set(looks).size).toBe(1);
});

test('what is wrong with a board leaves with it and comes with it into another unit', () => {
  const truth = unitWith('driver-dead');
  truth.takeOut('u', 'board', 'u.board');
  expect(truth.tryFunction('u', 'power', [])).toBe('fails');
  const healthy = unitWith('cell-flat');
  healthy.takeOut('u', 'board', 'u.board');
  healthy.putIn('u', 'board', 'u.board');
  expect(healthy.flawsOf('u').map((flaw) => flaw.fault.id)).toEqual(['cell-flat']);
  expect(truth.flawsOf('u')).toEqual([]);
  truth.putIn('u', 'board', 'u.board');
  expect(truth.flawsOf('u').map((flaw) => flaw.fault.id)).toEqual(['driver-dead']);
});

test('a remedy takes away what it mends and nothing else', () => {
  const truth = unitWith('bulb-open');
  for (let i = 0; i < 10; i++) truth.mend('u', 'clean-switch');
  expect(truth.flawsOf('u')).toHaveLength(1);
  for (let i = 0; i < 10; i++) truth.mend('u', 'new-bulb');
  expect(truth.flawsOf('u')).toEqual([]);
});
