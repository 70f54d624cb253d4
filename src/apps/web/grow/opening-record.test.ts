import { describe, expect, it } from 'vitest';
import { afterStep, FIRST_STEP, isComplete, recordedStep, stepName, type StepFields } from './opening-record.ts';

const NOTHING = { steps: [], fasteners: [] };
const fields = (more: Partial<StepFields>): StepFields => ({ ...FIRST_STEP, ...more });

describe('recording how a device opens', () => {
  it('counts the screws that were tapped on the photo, else those that were counted', () => {
    expect(stepName(fields({}))).toBe('Take out 4 screws, Cross 00, 5 mm');
    const tapped = fields({ places: [{ x: 10.4, y: 20 }], photo: 'ab' });
    expect(stepName(tapped)).toBe('Take out 1 screw, Cross 00, 5 mm');
    expect(recordedStep(tapped, NOTHING)).toEqual({
      step: {
        id: 'take-out-1-screw-cross-00-5-mm',
        name: 'Take out 1 screw, Cross 00, 5 mm',
        side: 'back',
        tool: 'Cross 00',
        after: [],
        frees: [],
        minutes: 0.3,
        cautions: [],
      },
      fasteners: { id: 'take-out-1-screw-cross-00-5-mm', name: 'Screws, Cross 00, 5 mm', drive: 'Cross 00', length_mm: 5, count: 1 },
      photo: 'ab',
      at: [[10, 20]],
    });
  });

  it('puts each step after the last one, under a name that is free', () => {
    const before = { id: 'lift-the-back', name: 'Lift the back' };
    const model = { steps: [before], fasteners: [] } as unknown as Parameters<typeof recordedStep>[1];
    const lifted = recordedStep(
      fields({ deed: 'lift', what: 'the back', reaches: 'open', frees: ['speaker'], cautions: ['sharp'] }),
      model,
    );
    expect(lifted.step).toEqual({
      id: 'lift-the-back-2',
      name: 'Lift the back',
      side: 'back',
      after: ['lift-the-back'],
      reaches: 'open',
      frees: ['speaker'],
      minutes: 0.5,
      cautions: ['sharp'],
    });
    expect(lifted).not.toHaveProperty('fasteners');
  });

  it('wants to know what comes off, and of screws the drive and how many', () => {
    expect(isComplete(fields({}))).toBe(true);
    expect(isComplete(fields({ drive: ' ' }))).toBe(false);
    expect(isComplete(fields({ count: 0 }))).toBe(false);
    expect(isComplete(fields({ deed: 'unlatch' }))).toBe(false);
    expect(isComplete(fields({ deed: 'unplug', what: 'the ribbon' }))).toBe(true);
  });

  it('keeps drive, length, side and photo for the next step', () => {
    const next = afterStep(fields({ drive: 'Cross 0', photo: 'ab', places: [{ x: 1, y: 2 }], reaches: 'open', cautions: ['esd'] }));
    expect(next).toEqual(fields({ drive: 'Cross 0', photo: 'ab' }));
  });
});
