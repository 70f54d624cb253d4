import { describe, expect, it } from 'vitest';
import { openUnit } from './open-unit.ts';
import { receiveItem } from './receive-item.ts';
import { recordClaim } from './record-claim.ts';
import { recordFinding } from './record-finding.ts';
import { recordReading } from './record-reading.ts';
import { recordTrial } from './record-trial.ts';
import { kindsOf, recordable } from './testing/recordable.ts';

const trial = {
  itemId: 'unit-1',
  function: 'sound',
  functionName: 'Sound',
  outcome: 'comes-and-goes',
  with: ['battery'],
  minutes: 2,
  stage: 'closed',
  stageNeeded: 'closed',
} as const;

describe('what was tried, seen and measured', () => {
  it('records a trial with its accessories and minutes', () => {
    const gesture = recordTrial(trial);
    expect(gesture.said).toBe('Sound: comes and goes');
    expect(recordable(gesture)).toMatchObject([
      { kind: 'trial-done', body: { item_id: 'unit-1', function: 'sound', outcome: 'comes-and-goes', with: ['battery'], minutes: 2 } },
    ]);
  });

  it('says first that the unit is open, when a check needed it further open than it was known to be', () => {
    expect(recordable(recordTrial({ ...trial, stageNeeded: 'board-out' }))[0]).toMatchObject({
      kind: 'opened-to',
      body: { item_id: 'unit-1', stage: 'board-out' },
    });
    expect(kindsOf(recordTrial({ ...trial, stage: 'board-out', stageNeeded: 'open' }))).toEqual(['trial-done']);
  });

  it('records a finding at its place', () => {
    const look = { itemId: 'unit-1', place: 'battery-contacts', placeName: 'Battery contacts', sees: 'corrosion', minutes: 1 } as const;
    const gesture = recordFinding({ ...look, stage: 'closed', stageNeeded: 'open' });
    expect(gesture.said).toBe('Battery contacts: corrosion');
    expect(recordable(gesture)).toMatchObject([
      { kind: 'opened-to', body: { stage: 'open' } },
      { kind: 'finding-noted', body: { place: 'battery-contacts', sees: 'corrosion', minutes: 1 } },
    ]);
  });

  it('records OL as no value, and says it as the meter does', () => {
    const meter = {
      itemId: 'unit-1',
      point: 'tp3',
      pointName: 'TP3',
      mode: 'ohms',
      minutes: 1,
      stage: 'open',
      stageNeeded: 'open',
    } as const;
    const gesture = recordReading({ ...meter, value: null });
    expect(gesture.said).toBe('TP3: OL');
    expect(recordable(gesture)).toMatchObject([{ kind: 'reading-taken', body: { point: 'tp3', mode: 'ohms', value: null } }]);
    expect(recordReading({ ...meter, value: 4700 }).said).toBe('TP3: 4.7 kΩ');
  });

  it('records arrival, opening and what the seller says', () => {
    expect(recordable(receiveItem('unit-1', 'one screw missing'))).toMatchObject([{ body: { condition: 'one screw missing' } }]);
    expect(recordable(openUnit('unit-1', 'closed', 3))).toMatchObject([{ kind: 'opened-to', body: { stage: 'closed', minutes: 3 } }]);
    expect(recordable(recordClaim('unit-1', { about: 'untested' }))).toMatchObject([
      { kind: 'claim-made', body: { claim: { about: 'untested' } } },
    ]);
  });
});
