import { describe, expect, it } from 'vitest';
import { clockedMinutes, clockTime } from './clock-time.ts';
import { declineAdvice } from './decline-advice.ts';
import { proveStep } from './prove-step.ts';
import { recordRemedy } from './record-remedy.ts';
import { takeParts } from './take-parts.ts';
import { kindsOf, recordable } from './testing/recordable.ts';
import { writeNote } from './write-note.ts';

describe('parts taken for a remedy', () => {
  const bags = [
    { id: 'bag-1', part: 'capacitor', count: 2 },
    { id: 'bag-2', part: 'switch', count: 9 },
    { id: 'bag-3', part: 'capacitor', count: 5 },
  ];

  it('come from the bags that hold them, one after the other', () => {
    expect(takeParts('unit-1', [{ part: 'capacitor', count: 4 }], bags)).toEqual([
      { kind: 'part-used', body: { bag_id: 'bag-1', item_id: 'unit-1', count: 2 } },
      { kind: 'part-used', body: { bag_id: 'bag-3', item_id: 'unit-1', count: 2 } },
    ]);
  });

  it('are left out as far as no bag holds them', () => {
    expect(takeParts('unit-1', [{ part: 'fuse', count: 1 }], bags)).toEqual([]);
    expect(takeParts('unit-1', [{ part: 'switch', count: 20 }], bags)).toMatchObject([{ body: { count: 9 } }]);
  });

  it('are used before the work is noted as done', () => {
    const remedy = {
      itemId: 'unit-1',
      remedy: 'recap',
      remedyName: 'Replace the capacitor',
      minutes: 12,
      outcome: 'mended',
      text: '',
    } as const;
    const parts = takeParts('unit-1', [{ part: 'capacitor', count: 1 }], bags);
    expect(kindsOf(recordRemedy({ ...remedy, parts, stage: 'open', stageNeeded: 'board-out' }))).toEqual([
      'opened-to',
      'part-used',
      'remedy-done',
    ]);
  });
});

describe('the clock', () => {
  it('counts minutes to a tenth and never below zero', () => {
    expect(clockedMinutes(0, 90_000)).toBe(1.5);
    expect(clockedMinutes(0, 2_000)).toBe(0);
    expect(clockedMinutes(60_000, 0)).toBe(0);
  });

  it('is recorded with its task', () => {
    expect(recordable(clockTime('unit-1', 1.5, 'at the bench'))).toMatchObject([
      { kind: 'time-clocked', body: { item_id: 'unit-1', minutes: 1.5, task: 'at the bench' } },
    ]);
  });
});

describe('the rest of the work', () => {
  it('signs a proof step off only with the reason that was given', () => {
    const step = { itemId: 'unit-1', step: 'charge', stepName: 'Charge under watch', reason: 'no charger fits', minutes: 0 };
    const gesture = proveStep({ ...step, outcome: 'signed-off' });
    expect(gesture.said).toBe('Charge under watch: signed off');
    expect(recordable(gesture)).toMatchObject([{ body: { outcome: 'signed-off', reason: 'no charger fits' } }]);
  });

  it('records a note and a declined advice', () => {
    expect(recordable(writeNote('unit-1', 'smells of smoke'))).toMatchObject([{ kind: 'note-written', body: { text: 'smells of smoke' } }]);
    expect(recordable(declineAdvice('unit-1', 'check.try-sound', 'did it before'))).toMatchObject([
      { kind: 'advice-declined', body: { advice: 'check.try-sound', reason: 'did it before' } },
    ]);
  });
});
