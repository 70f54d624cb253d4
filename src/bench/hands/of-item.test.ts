import { describe, expect, it } from 'vitest';
import { foldLog } from '../fold/index.ts';
import { oneLamp, testLog, type Step } from '../testing/events.ts';
import { smallModels } from '../testing/small-model.ts';
import { screwCountOf, stepTimesOf, ticksOf, wayIn } from './index.ts';

const models = smallModels();
const model = models.get('lamp-1')!;
const after = (...steps: readonly Step[]) => foldLog(testLog(...oneLamp, ...steps), models);
const lamp = (...steps: readonly Step[]) => after(...steps).items.get('lamp-a')!;
const step = (id: string, way: 'in' | 'back' = 'in', minutes = 0): Step => ['step-done', { item_id: 'lamp-a', step: id, way, minutes }];
const counted = (way: 'out' | 'back', count: number, foreign = 0): Step => [
  'fasteners-counted',
  { item_id: 'lamp-a', fasteners: 'screws', way, count, foreign },
];

describe('steps that are ticked', () => {
  it('open the item as far as they reach, and closing goes back', () => {
    expect(lamp(step('open-lamp')).stage).toBe('open');
    expect(lamp(step('open-lamp'), step('board')).stage).toBe('board-out');
    expect(lamp(step('open-lamp'), step('board'), step('board', 'back')).stage).toBe('open');
    expect(lamp(step('open-lamp'), step('open-lamp', 'back')).stage).toBe('closed');
  });

  it('undo the proof when they go deeper, and not on the way back', () => {
    const proved: Step = ['proof-step-done', { item_id: 'lamp-a', step: 'works.power', outcome: 'pass' }];
    expect(lamp(proved, step('open-lamp')).proof.size).toBe(0);
    expect(lamp(step('open-lamp'), proved, step('open-lamp', 'back')).proof.size).toBe(1);
  });

  it('leave a stage alone that was recorded by itself and is deeper', () => {
    const opened: Step = ['opened-to', { item_id: 'lamp-a', stage: 'board-out' }];
    expect(lamp(opened, step('open-lamp')).stage).toBe('board-out');
  });

  it('are all put back where a unit is noted as closed at once', () => {
    const closed: Step = ['opened-to', { item_id: 'lamp-a', stage: 'closed' }];
    expect(lamp(step('open-lamp'), step('board'), closed).opened).toEqual([]);
  });

  it('take their minutes, are planned on from, and teach the next unit', () => {
    const state = after(step('open-lamp', 'in', 8));
    const item = state.items.get('lamp-a')!;
    expect(item.minutes).toBe(8);
    expect(ticksOf(item)).toEqual([{ step: 'open-lamp', minutes: 8 }]);
    const way = wayIn(model, { kind: 'stage', stage: 'board-out' }, { ticks: ticksOf(item), times: stepTimesOf(state, 'lamp-1') });
    expect(way.ok && way.steps.map(({ spec }) => spec.id)).toEqual(['board']);
    const fresh = wayIn(model, { kind: 'stage', stage: 'open' }, { times: stepTimesOf(state, 'lamp-1') });
    expect(fresh.ok && fresh.steps[0]!.minutes).toBeGreaterThan(2);
    expect(stepTimesOf(state, 'lamp-2').size).toBe(0);
  });
});

describe('a photograph, of which nothing is put back', () => {
  it('does not keep the next opening from beginning a new count', () => {
    const first = { ...model.file.steps[0]!, id: 'photograph', fasteners: undefined, reaches: undefined, put_back: false };
    const withPhoto = new Map([['lamp-1', { ...model, file: { ...model.file, steps: [first, ...model.file.steps] } }]]);
    const log = testLog(...oneLamp, step('photograph'), step('open-lamp'), counted('out', 1), step('open-lamp', 'back'));
    const item = foldLog(log, withPhoto).items.get('lamp-a')!;
    expect(item.opened).toEqual([]);
  });
});

describe('fasteners that are counted', () => {
  it('add up until the item is opened anew', () => {
    const once = [step('open-lamp'), counted('out', 1), counted('out', 1, 1), counted('back', 2)];
    expect(screwCountOf(model.file, lamp(...once))).toMatchObject({ even: true, whole: false, shopping: [{ set: 'screws', count: 1 }] });
    expect(screwCountOf(model.file, lamp(...once.slice(0, 3)))).toMatchObject({ even: false, sets: [{ onMat: 2 }] });
    const again = lamp(...once, step('open-lamp', 'back'), step('open-lamp'));
    expect(screwCountOf(model.file, again)).toMatchObject({ even: true, findings: [] });
  });
});
