import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { touchedByWork } from '../../src/bench/advice/touched-by-work.ts';
import { goalsOf, wayIn, type Goal } from '../../src/bench/hands/index.ts';
import type { Model } from '../../src/bench/models/index.ts';
import { recipeFor } from '../../src/bench/recipes/index.ts';
import { loadModels } from '../../src/edges/models/load-models.ts';

const IDS = ['any-pocket-player', 'corrie-cp4', 'tern-tn10', 'tern-tn20'];
let models: ReadonlyMap<string, Model>;
beforeAll(async () => void ({ models } = await loadModels(join(import.meta.dirname, '../../models'))));

const way = (id: string, goal: Goal) => {
  const found = wayIn(models.get(id)!, goal);
  if (!found.ok) throw new Error(found.code);
  return found;
};
const steps = (id: string, goal: Goal): string[] => way(id, goal).steps.map(({ spec }) => spec.id);

describe('the way into the models that ship', () => {
  it.each(IDS)('%s: every goal that is offered, every slot and every remedy has a way, proved best', (id) => {
    const { file } = models.get(id)!;
    const goals: Goal[] = [
      ...goalsOf(file).map(({ goal }) => goal),
      ...file.slots.map((slot): Goal => ({ kind: 'slot', slot: slot.id })),
      ...file.remedies.map((remedy): Goal => ({ kind: 'remedy', remedy: remedy.id })),
      ...file.checks.map((check): Goal => ({ kind: 'check', check: check.id })),
    ];
    expect(goals.filter((goal) => !way(id, goal).exact)).toEqual([]);
    expect(steps(id, { kind: 'stage', stage: 'board-out' }).length).toBeGreaterThan(4);
  });

  it.each(IDS)('%s: closing puts back every screw that came out', (id) => {
    const { steps: into, back } = way(id, { kind: 'stage', stage: 'board-out' });
    const screws = (of: typeof into) => of.reduce((sum, { fasteners }) => sum + (fasteners?.count ?? 0), 0);
    expect(screws(back)).toBe(screws(into));
  });

  it('a Tern TN-20: the cell comes out before any tool is taken up, and the safer way round the speaker is gone', () => {
    const order = steps('tern-tn20', { kind: 'stage', stage: 'board-out' });
    expect(order.indexOf('cell-out')).toBeLessThan(order.indexOf('bay-screw-out'));
    expect(order).toContain('free-speaker');
    expect(order).not.toContain('lay-speaker-aside');
    expect(way('tern-tn20', { kind: 'part', part: 'U5' }).steps.at(-1)!.spec.id).toBe('lift-board');
  });

  it('a Tern TN-10: the display takes neither the board nor its screws out', () => {
    expect(steps('tern-tn10', { kind: 'slot', slot: 'display' }).at(-1)).toBe('free-ribbon');
    expect(steps('tern-tn10', { kind: 'slot', slot: 'display' })).not.toContain('board-screws-out');
  });
});

describe('work on the models that ship', () => {
  it('on one part of a board bears on its block, on what lies near the heat, and on what was unplugged', () => {
    const model = models.get('tern-tn20')!;
    const touched = touchedByWork(model, [
      { kind: 'remedy', remedy: 'replace.U5', place: null, outcome: 'mended', minutes: 20, eventId: 'e', at: '2026-01-01T00:00:00Z' },
    ]);
    expect(touched.get('charge-control')).toBe('worked-on');
    expect(touched.get('display')).toBe('opened');
    expect([...touched.values()]).toContain('near-heat');
  });

  it.each(IDS)('%s: every remedy of heat or of a transplant has a recipe', (id) => {
    const { remedies } = models.get(id)!.file;
    const bare = remedies.filter(({ kind, cautions }) => kind === 'transplant' || kind === 'reflow' || cautions.includes('hot-tool'));
    expect(bare.filter((remedy) => recipeFor(remedy) === null).map((remedy) => remedy.id)).toEqual([]);
  });
});
