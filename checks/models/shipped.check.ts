import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Model, ModelFile } from '../../src/bench/models/index.ts';
import { loadModels, type LoadedModels } from '../../src/edges/models/load-models.ts';

const IDS = ['any-pocket-player', 'corrie-cp4', 'tern-tn10', 'tern-tn20'];
const LEVEL_1 = IDS.slice(1);

let loaded: LoadedModels;
beforeAll(async () => void (loaded = await loadModels(join(import.meta.dirname, '../../models'))));
const fileOf = (id: string): ModelFile => loaded.models.get(id)!.file;

describe('the models that ship', () => {
  it('load without a problem', () => {
    expect(loaded.problems).toEqual([]);
    expect([...loaded.models.keys()]).toEqual(IDS);
  });

  it.each(IDS)('%s expects one or two faults of what is sold as faulty', (id) => {
    const sum = fileOf(id).faults.reduce((total, { rate }) => total + rate, 0);
    expect(sum).toBeGreaterThan(1);
    expect(sum).toBeLessThan(1.3);
  });

  it.each(IDS)('%s has no block that cannot fail, none that nothing needs, and no fault without a remedy', (id) => {
    const { blocks, faults, functions, remedies } = fileOf(id);
    const needed = new Set(functions.flatMap(({ needs }) => needs.flatMap((need) => (typeof need === 'string' ? [need] : need.any))));
    const failing = new Set(faults.map(({ block }) => block));
    const mended = new Set(remedies.flatMap(({ mends }) => Object.keys(mends)));
    expect(blocks.map((block) => block.id).filter((block) => !needed.has(block) || !failing.has(block))).toEqual([]);
    expect(faults.map((fault) => fault.id).filter((fault) => !mended.has(fault))).toEqual([]);
  });

  it.each(IDS)('%s has a look for each fault that can be seen, and a measurement for each point', (id) => {
    const { checks, faults, points } = fileOf(id);
    const looked = new Set(checks.map(({ look }) => look));
    const accessories = new Set(['charger', 'cable', 'supply', 'phones', 'cells', 'cartridge', 'tape']);
    const seen = faults.filter(
      (fault) => Object.values(fault.seen).some((chance) => (chance ?? 0) >= 0.5) && !accessories.has(fault.block),
    );
    expect(seen.map(({ block }) => block).filter((block) => !looked.has(block))).toEqual([]);
    const measured = new Set(checks.map(({ measure }) => measure));
    expect(points.map((point) => point.id).filter((point) => !measured.has(point))).toEqual([]);
  });

  it.each(IDS)('%s has a transplant for each slot, and says what a working one is worth in all', (id) => {
    const { slots, remedies, prices } = fileOf(id);
    const swapped = new Set(remedies.map(({ slot }) => slot));
    expect(slots.map((slot) => slot.id).filter((slot) => !swapped.has(slot))).toEqual([]);
    const whole = slots.reduce((sum, { value }) => sum + value, 0);
    expect(whole).toBeLessThan(prices.working);
    expect(whole).toBeGreaterThan(prices.for_parts);
  });

  it.each(IDS)('%s names the danger of each hot, wet or charged job', (id) => {
    const { remedies, cell } = fileOf(id);
    const hot = remedies.filter(({ kind }) => kind === 'reflow' || kind === 'bridge-with-wire');
    expect(hot.length).toBeGreaterThan(0);
    expect(hot.filter(({ cautions }) => !cautions.includes('hot-tool')).map((remedy) => remedy.id)).toEqual([]);
    const fuming = remedies.filter(({ parts }) => parts.some(({ part }) => part === 'flux'));
    expect(fuming.filter(({ cautions }) => !cautions.includes('fumes')).map((remedy) => remedy.id)).toEqual([]);
    const wet = remedies.filter(({ kind, parts }) => kind === 'clean' && parts.some(({ part }) => part === 'cleaning'));
    expect(wet.filter(({ cautions }) => !cautions.includes('solvent')).map((remedy) => remedy.id)).toEqual([]);
    if (cell?.chemistry !== 'li-ion') return;
    expect(hot.filter(({ cautions }) => !cautions.includes('lithium-cell')).map((remedy) => remedy.id)).toEqual([]);
  });

  it.each(LEVEL_1)('%s has readings of four to six good boards at every point, alike within a few per cent', (id) => {
    const { file, readings } = loaded.models.get(id) as Model;
    const boards = new Set(readings.map(({ board }) => board));
    expect(boards.size).toBeGreaterThanOrEqual(4);
    expect(boards.size).toBeLessThanOrEqual(6);
    for (const point of file.points) {
      const values = readings.filter((reading) => reading.point === point.id).map(({ value }) => value!);
      expect(values).toHaveLength(boards.size);
      const [low, high] = [Math.min(...values), Math.max(...values)];
      expect((high - low) / high, point.id).toBeLessThan(0.15);
    }
  });

  it.each(LEVEL_1)('%s has steps that reach both stages of opening and take out every screw', (id) => {
    const { steps, fasteners } = fileOf(id);
    expect(steps.flatMap(({ reaches }) => reaches ?? [])).toEqual(['open', 'board-out']);
    const taken = steps.flatMap((step) => step.fasteners ?? []);
    expect([...taken].sort()).toEqual(fasteners.map((fastener) => fastener.id).sort());
  });
});
