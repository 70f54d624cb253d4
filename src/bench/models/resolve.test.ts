import { describe, expect, it } from 'vitest';
import { resolveModels } from './resolve.ts';

type Value = Record<string, unknown>;

/** A torch with one block of each kind of name that a file can mention. */
const torch = (changes: Value = {}): Value => ({
  format: 1,
  id: 'torch',
  name: 'Torch',
  level: 0,
  currency: 'GBP',
  prices: { working: 900, spread: 0.2, for_parts: 100 },
  opening_minutes: { open: 2, board_out: 2 },
  board: { width_mm: 40, height_mm: 20 },
  blocks: [
    { id: 'cell', name: 'Cell', assembly: 'battery' },
    { id: 'bulb', name: 'Bulb' },
  ],
  slots: [{ id: 'battery', name: 'Battery', value: 100, minutes: 1 }],
  functions: [{ id: 'light', name: 'Light', needs: ['cell', { any: ['bulb', 'cell'] }] }],
  faults: [{ id: 'bulb-open', name: 'Bulb open', block: 'bulb', mode: 'open', rate: 0.5, shifts: { BULB: 'open' } }],
  accessories: [{ id: 'good-cell', name: 'Good cell', block: 'cell' }],
  points: [{ id: 'BULB', name: 'Bulb', block: 'bulb', mode: 'ohms' }],
  checks: [{ id: 'try', name: 'Try', minutes: 1, try: 'light', with: ['good-cell'] }],
  remedies: [{ id: 'new-bulb', name: 'New bulb', kind: 'replace', mends: { 'bulb-open': 0.9 }, minutes: 2, parts: [{ part: 'bulb' }] }],
  parts: [{ id: 'bulb', name: 'Bulb', price: 50 }],
  fasteners: [{ id: 'cap', name: 'Cap', drive: 'by hand', length_mm: 5, count: 1 }],
  steps: [{ id: 'open', name: 'Open', minutes: 1, fasteners: 'cap' }],
  ...changes,
});

const problemsOf = (changes: Value) => resolveModels(new Map([['torch', torch(changes)]])).problems.get('torch') ?? [];
const found = (changes: Value) => problemsOf(changes).map(({ code, path }) => `${code} ${path.join('.')}`);

/** The first entry of a section, changed. */
const first = (section: string, changes: Value): Value => {
  const [entry, ...others] = torch()[section] as Value[];
  return { [section]: [{ ...entry, ...changes }, ...others] };
};

const BACK: Value = { panels: [{ id: 'back', name: 'Back', width_mm: 20, height_mm: 30 }] };
const WAITING = [
  { id: 'open', name: 'Open', minutes: 1, fasteners: 'cap', after_any: [['pry', 'pull']] },
  { id: 'pry', name: 'Pry', minutes: 1, after: ['open'] },
  { id: 'pull', name: 'Pull', minutes: 1, after: ['pry'] },
];

describe('resolveModels', () => {
  it('takes a whole model and fills in its defaults', () => {
    const { files, problems } = resolveModels(new Map([['torch', torch()]]));
    expect(problems.size).toBe(0);
    expect(files.get('torch')).toMatchObject({ unknown_rate: 0.05, revision: '', points: [{ power: 'off', stage: 'board-out' }] });
  });

  it.each<[string, Value, string]>([
    ['a slot of a block', first('blocks', { assembly: 'batery' }), 'model-unknown-name blocks.0.assembly'],
    ['a need', first('functions', { needs: ['cell', 'bulbs'] }), 'model-unknown-name functions.0.needs.1'],
    ['a choice of needs', first('functions', { needs: [{ any: ['cell', 'lamp'] }] }), 'model-unknown-name functions.0.needs.0.any.1'],
    ['the block of a fault', first('faults', { block: 'lamp' }), 'model-unknown-name faults.0.block'],
    ['a shifted point', first('faults', { shifts: { BULBS: 'open' } }), 'model-unknown-name faults.0.shifts.BULBS'],
    ['what an accessory stands in for', first('accessories', { block: 'lamp' }), 'model-unknown-name accessories.0.block'],
    ['the block of a point', first('points', { block: 'lamp' }), 'model-unknown-name points.0.block'],
    ['a tried function', first('checks', { try: 'sound' }), 'model-unknown-name checks.0.try'],
    ['an accessory of a trial', first('checks', { with: ['good-lamp'] }), 'model-unknown-name checks.0.with.0'],
    ['a looked-at block', first('checks', { try: undefined, with: [], look: 'lamp' }), 'model-unknown-name checks.0.look'],
    ['a measured point', first('checks', { try: undefined, with: [], measure: 'LAMP' }), 'model-unknown-name checks.0.measure'],
    ['a mended fault', first('remedies', { mends: { 'bulb-shut': 0.9 } }), 'model-unknown-name remedies.0.mends.bulb-shut'],
    ['a part of a remedy', first('remedies', { parts: [{ part: 'lamp' }] }), 'model-unknown-name remedies.0.parts.0.part'],
    ['the slot of a transplant', first('remedies', { kind: 'transplant', slot: 'lamp' }), 'model-unknown-name remedies.0.slot'],
    ['a step before', first('steps', { after: ['shut'] }), 'model-unknown-name steps.0.after.0'],
    ['the fasteners of a step', first('steps', { fasteners: 'screws' }), 'model-unknown-name steps.0.fasteners'],
    ['a recipe', first('remedies', { recipe: 'new-bulbs' }), 'model-unknown-name remedies.0.recipe'],
    ['an alternative step before', first('steps', { after_any: [['open', 'shut']] }), 'model-unknown-name steps.0.after_any.0.1'],
    ['what a step frees', first('steps', { frees: ['bulb', 'battery', 'lamp'] }), 'model-unknown-name steps.0.frees.2'],
    [
      'where a sign is looked for',
      first('steps', { look_for: [{ at: 'lamp', sees: ['worn'] }] }),
      'model-unknown-name steps.0.look_for.0.at',
    ],
    ['the panel of a fastener', first('fasteners', { panel: 'back' }), 'model-unknown-name fasteners.0.panel'],
    ['places without a panel', first('fasteners', { at: [[1, 1]] }), 'model-fasteners fasteners.0.at'],
    [
      'more places than fasteners',
      {
        ...BACK,
        ...first('fasteners', {
          panel: 'back',
          at: [
            [1, 1],
            [2, 2],
          ],
        }),
      },
      'model-fasteners fasteners.0.at',
    ],
    ['a place beside the panel', { ...BACK, ...first('fasteners', { panel: 'back', at: [[1, 31]] }) }, 'model-fasteners fasteners.0.at.0'],
    ['a step that waits for each of its alternatives', { steps: WAITING }, 'model-cycle steps.0.after_any'],
    ['a model that fits', first('slots', { fits: ['torch-2'] }), 'model-unknown-name slots.0.fits.0'],
    ['no kind of check', first('checks', { try: undefined, with: [] }), 'model-check-kind checks.0'],
    ['two kinds of check', first('checks', { look: 'bulb' }), 'model-check-kind checks.0'],
    ['accessories without a trial', first('checks', { try: undefined, look: 'bulb' }), 'model-check-kind checks.0.with'],
    ['a transplant without a slot', first('remedies', { kind: 'transplant' }), 'model-transplant-slot remedies.0'],
    ['a slot without a transplant', first('remedies', { slot: 'battery' }), 'model-transplant-slot remedies.0'],
    [
      'behaviour that sums to 0.9',
      first('faults', { behaves: { works: 0.1, comes_and_goes: 0.2, fails: 0.6 } }),
      'model-behaves-sum faults.0.behaves',
    ],
    ['a place beside the board', first('points', { at: [10, 20.5] }), 'model-off-board points.0.at'],
    ['an id that is not the folder', { id: 'lamp' }, 'model-wrong-id id'],
    ['a chance above 1', first('faults', { rate: 1.2 }), 'model-shape faults.0.rate'],
    ['a missing section', { blocks: undefined }, 'model-shape blocks'],
    ['an unknown field', first('faults', { chance: 0.1 }), 'model-unknown-field faults.0.chance'],
    [
      'an unknown field within a choice',
      first('functions', { needs: [{ any: ['cell', 'bulb'], all: [] }] }),
      'model-unknown-field functions.0.needs.0.all',
    ],
    ['an unknown kind of finding', first('faults', { seen: { rusty: 0.3 } }), 'model-unknown-field faults.0.seen.rusty'],
  ])('names %s', (_, changes, expected) => {
    expect(found(changes)).toEqual([expected]);
  });

  it('names an id given twice in one section, and lets two sections share one', () => {
    const block = { id: 'cell', name: 'Other' };
    expect(found({ blocks: [...(torch()['blocks'] as Value[]), block] })).toEqual(['model-duplicate-id blocks.2.id']);
    expect(found({ parts: [...(torch()['parts'] as Value[]), { id: 'light', name: 'Like the function', price: 1 }] })).toEqual([]);
  });

  it('names steps that wait for each other', () => {
    const step = (id: string, ...after: string[]): Value => ({ id, name: id, minutes: 1, after });
    const [problem] = problemsOf({ steps: [step('a'), step('b', 'a', 'd'), step('c', 'b'), step('d', 'c')] });
    expect(problem).toMatchObject({
      code: 'model-cycle',
      path: ['steps', 1, 'after'],
      message: 'waits for itself: b after d after c after b',
    });
  });

  it('says every problem, each with the next thing to do', () => {
    const problems = problemsOf({ ...first('faults', { block: 'lamp', shifts: { X: 'low' } }), ...first('checks', { try: 'sound' }) });
    expect(problems).toHaveLength(3);
    for (const { next } of problems) expect(next).toMatch(/Known here: .+\.$/);
  });
});

describe('a model based on another', () => {
  const later = (changes: Value = {}): Value => ({
    format: 1,
    id: 'torch-2',
    name: 'Later torch',
    level: 0,
    based_on: 'torch',
    ...changes,
  });
  const resolve = (...models: [string, Value | null][]) => resolveModels(new Map(models));

  it('takes over the sections that it leaves out, and nothing of those that it has', () => {
    const parts = [{ id: 'bulb', name: 'Brighter bulb', price: 90 }];
    const { files } = resolve(['torch', torch({ about: 'The first' })], ['torch-2', later({ parts })]);
    const [base, file] = [files.get('torch')!, files.get('torch-2')!];
    expect(file).toMatchObject({ id: 'torch-2', name: 'Later torch', about: '', currency: 'GBP', parts });
    expect(file.blocks).toEqual(base.blocks);
  });

  it('takes over through several, the nearest first', () => {
    const { files } = resolve(
      ['torch-3', later({ id: 'torch-3', based_on: 'torch-2' })],
      ['torch-2', later({ currency: 'EUR' })],
      ['torch', torch()],
    );
    expect(files.get('torch-3')).toMatchObject({ currency: 'EUR', level: 0 });
    expect(files.get('torch-3')!.checks).toHaveLength(1);
  });

  it('shows a name that is dangling in a section taken over at `based_on`', () => {
    const { problems, files } = resolve(['torch', torch()], ['torch-2', later({ parts: [] })]);
    expect([...files.keys()]).toEqual(['torch']);
    expect(problems.get('torch-2')).toMatchObject([
      { code: 'model-unknown-name', path: ['based_on'], message: expect.stringContaining('remedies.0.parts.0.part names the part "bulb"') },
    ]);
  });

  it('is refused when its base is unknown, unreadable, or leads back to itself', () => {
    expect(resolve(['torch-2', later()]).problems.get('torch-2')).toMatchObject([{ code: 'model-base', path: ['based_on'] }]);
    expect(resolve(['torch', null], ['torch-2', later()]).problems.get('torch-2')).toMatchObject([{ code: 'model-base' }]);
    const ring = resolve(['torch', torch({ based_on: 'torch-2' })], ['torch-2', later()]).problems;
    expect(ring.get('torch')).toMatchObject([
      { code: 'model-cycle', path: ['based_on'], message: expect.stringContaining('torch is based on torch-2 is based on torch') },
    ]);
    expect(ring.get('torch-2')).toHaveLength(1);
  });
});
