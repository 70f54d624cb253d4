import { describe, expect, it } from 'vitest';
import { judgeCharge } from '../../src/core/rework/index.ts';
import { oddLogs } from './odd-logs.ts';
import { chargeOf } from './simulated-cell.ts';

describe('an odd log gets the right answer or a clear refusal', () => {
  it.each(oddLogs('cell 1'))('$name', ({ wrong }) => {
    expect(wrong()).toEqual([]);
  });

  it.each(['cell 2', 'cell 3', 'cell 4'])('whatever the cell: %s', (seed) => {
    expect(oddLogs(seed).flatMap(({ name, wrong }) => wrong().map((what) => `${name}: ${what}`))).toEqual([]);
  });
});

describe('the chemistry of a cell', () => {
  const log = chargeOf({ capacityAh: 2, amps: 1, fullV: 4.2, endA: 0.1, ohms: 0.08 });

  it('is asked for and never taken from the voltage', () => {
    expect(judgeCharge(log, { chemistry: undefined })).toEqual({ ok: false, code: 'chemistry-not-said' });
  });

  it('makes the same log right for one cell and dangerous for another', () => {
    const reasons = (['li-ion-4.20', 'li-ion-4.35', 'li-fe-po4'] as const).map((chemistry) => {
      const found = judgeCharge(log, { chemistry });
      return found.ok ? found.verdicts.charger.reason : found.code;
    });
    expect(reasons).toEqual(['ends-as-it-should', 'held-voltage-off', 'over-voltage']);
  });
});
