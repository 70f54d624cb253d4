import { describe, expect, it } from 'vitest';
import { smallModels } from '../testing/small-model.ts';
import { ModelFile, type Model } from '../models/index.ts';
import { goalsOf, needsOf, screwCount, screwMat, wayIn, type Goal } from './index.ts';

const lamp = smallModels().get('lamp-1')!;
const bare: Model = { ...lamp, file: { ...lamp.file, steps: [], fasteners: [] } };
const model: Model = {
  ...lamp,
  file: ModelFile.parse({
    ...lamp.file,
    panels: [{ id: 'back', name: 'Back', width_mm: 40, height_mm: 60 }],
    fasteners: [
      { id: 'screws', name: 'Screws of the back', drive: 'Cross 00', length_mm: 6, count: 2, panel: 'back', at: [[5, 5]], price: 15 },
    ],
    steps: [
      { id: 'photograph', name: 'Photograph it', minutes: 2, put_back: false },
      { id: 'cell-out', name: 'Take the cell out', after: ['photograph'], side: 'back', frees: ['battery'], minutes: 1 },
      {
        id: 'screws-out',
        name: 'Take the screws out',
        after: ['cell-out'],
        tool: 'Cross 00',
        side: 'back',
        fasteners: 'screws',
        minutes: 2,
      },
      { id: 'pry', name: 'Pry the back off', after: ['cell-out'], tool: 'Pick', side: 'back', minutes: 1, risk: 0.05 },
      { id: 'back-off', name: 'Lift the back off', after_any: [['screws-out', 'pry']], side: 'back', reaches: 'open', minutes: 0.5 },
      { id: 'board', name: 'Lift the board out', after: ['back-off'], side: 'front', reaches: 'board-out', frees: ['board'], minutes: 3 },
    ],
  }),
};

const way = (goal: Goal, options = {}) => {
  const found = wayIn(model, goal, options);
  if (!found.ok) throw new Error(found.code);
  return found;
};
const ids = (steps: readonly { readonly spec: { readonly id: string } }[]): string[] => steps.map(({ spec }) => spec.id);

describe('the way to a goal of a model', () => {
  it('takes the safer of two ways, and closes the same way backwards without the photographs', () => {
    const found = way({ kind: 'stage', stage: 'open' });
    expect(ids(found.steps)).toEqual(['photograph', 'cell-out', 'screws-out', 'back-off']);
    expect(ids(found.back)).toEqual(['back-off', 'screws-out', 'cell-out']);
    expect(found).toMatchObject({ exact: true, effort: { toolChanges: 1, turnings: 0 } });
    expect(found.steps[2]).toMatchObject({ changesTool: true, fasteners: { drive: 'Cross 00', count: 2 } });
  });

  it('goes on from what is ticked, whichever way that was, and puts all of it back', () => {
    const ticks = ['photograph', 'cell-out', 'pry'].map((step) => ({ step, minutes: 2 }));
    const found = way({ kind: 'slot', slot: 'board' }, { ticks });
    expect(ids(found.steps)).toEqual(['back-off', 'board']);
    expect(ids(found.back)).toEqual(['board', 'back-off', 'pry', 'cell-out']);
    expect(found.progress).toMatchObject({ next: 'back-off', done: 3, of: 5, minutesSpent: 6, minutesLeft: 3.5 });
  });

  it('counts on the minutes that the person took before', () => {
    const found = way({ kind: 'slot', slot: 'battery' }, { times: new Map([['cell-out', [4, 4]]]) });
    expect(found.steps.at(-1)!.minutes).toBeCloseTo(2, 9);
  });

  it.each<[string, Goal, unknown]>([
    ['a slot that a step frees', { kind: 'slot', slot: 'battery' }, ['cell-out']],
    ['a block by the assembly that it is part of', { kind: 'block', block: 'switch' }, ['board']],
    ['a remedy by its stage', { kind: 'remedy', remedy: 'clean-switch' }, ['back-off']],
    ['a transplant by its slot and its stage', { kind: 'remedy', remedy: 'other-board' }, ['board', 'board']],
    ['a check by its stage', { kind: 'check', check: 'try-power' }, []],
  ])('reaches %s', (_, goal, needs) => {
    expect(needsOf(model, goal)).toEqual({ ok: true, needs });
  });

  it('says what it does not know and where no step leads', () => {
    expect(needsOf(model, { kind: 'block', block: 'lens' })).toEqual({ ok: false, code: 'unknown-goal' });
    expect(needsOf(model, { kind: 'part', part: 'U7' })).toEqual({ ok: false, code: 'unknown-goal' });
    expect(needsOf(bare, { kind: 'stage', stage: 'open' })).toEqual({ ok: false, code: 'no-step-leads-there' });
    expect(wayIn(bare, { kind: 'stage', stage: 'open' })).toEqual({ ok: false, code: 'no-step-leads-there' });
  });

  it('offers the goals that steps lead to', () => {
    expect(goalsOf(model.file).map(({ name }) => name)).toEqual(['Open it', 'Take the board out', 'Battery', 'Board']);
    expect(goalsOf(bare.file)).toEqual([]);
  });
});

describe('the screws of a model', () => {
  it('have a mat with their places, and a tray for the one without', () => {
    const mat = screwMat(model.file, 'A4');
    const circles = mat.ok ? mat.pages[0]!.shapes.filter(({ kind }) => kind === 'circle') : [];
    expect(circles.map((shape) => shape.kind === 'circle' && shape.what)).toEqual(['place', 'tray']);
  });

  it('become findings and a shopping line when they are missing or of another kind', () => {
    const count = screwCount(model.file, [{ set: 'screws', count: 1, foreign: 1 }], []);
    expect(count.findings.map(({ sees, text }) => `${sees}: ${text}`)).toEqual([
      'missing: 1 missing of: Screws of the back',
      'opened-before: 1 of another kind among: Screws of the back',
    ]);
    expect(count.shopping).toEqual([{ set: 'screws', text: 'Screws of the back: Cross 00, 6 mm', count: 2, priceMinor: 15 }]);
  });

  it('that are not out yet are not missing', () => {
    expect(screwCount(model.file, [], [])).toMatchObject({ even: true, findings: [], shopping: [] });
  });
});
