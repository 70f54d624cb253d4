import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { openBench } from '../../src/bench/open-bench.ts';
import type { Bench } from '../../src/bench/bench.ts';
import { memoryStore } from '../../src/bench/testing/memory-store.ts';
import { systemClock } from '../../src/edges/clock.ts';
import { loadModels } from '../../src/edges/models/load-models.ts';
import { randomStream } from '../../src/core/numeric/index.ts';
import { OWN_POINTS, POINT_OF } from './own-points.ts';
import { SeededPlayer } from './seeded-player.ts';
import type { Model } from '../../src/bench/models/index.ts';

const MOST_STEPS = 30;
/** So many seeded faults are tried; more take longer than a check should. */
const TRIED = 10;
const SOLVED_SHARE = 0.7;

let models: ReadonlyMap<string, Model>;
beforeAll(async () => {
  ({ models } = await loadModels(join(import.meta.dirname, '../../models')));
});

function ownModel(): { bench: Bench; note: (kind: string, body: object) => void } {
  const bench = openBench({ store: memoryStore(), models, clock: systemClock(), device: 'check', version: '0' });
  const note = (kind: string, body: object): void => {
    const result = bench.record([{ kind, body }]);
    if (!result.ok) throw new Error(`${kind}: ${result.message}`);
  };
  const answers = { power: 'battery-and-charger', cell_volts: 3, display: 'none', slot: true, sound: 'socket', charging: false };
  note('model-begun', { model_id: 'mine', name: 'Corrie CP-4 of mine', currency: 'GBP', from: { answers } });
  for (const { id, name, block } of OWN_POINTS) {
    note('model-fact-set', {
      model_id: 'mine',
      section: 'points',
      id,
      value: { name, block, mode: 'volts', power: 'battery', stage: 'open' },
    });
    note('model-fact-set', {
      model_id: 'mine',
      section: 'checks',
      id: `measure-${id}`,
      value: { name: `Measure ${name}`, minutes: 1, stage: 'open', measure: id },
    });
  }
  for (const { board, point, value } of models.get('corrie-cp4')!.readings)
    for (const [own, of] of Object.entries(POINT_OF))
      if (of === point) note('model-reading-taught', { model_id: 'mine', board, point: own, mode: 'volts', value });
  return { bench, note };
}

/** Follows the advice until the block at fault is worked on: after how many checks and wrong remedies, or null. */
function solve(player: SeededPlayer): { checks: number; wrong: number } | null {
  const { bench, note } = ownModel();
  const items = [{ item_id: 'unit', name: 'Unit', model_id: 'mine', expected_value_minor: 1000 }];
  note('lot-bought', { lot_id: 'lot', title: 't', seller: 's', price_minor: 500, currency: 'GBP', items });
  note('item-received', { item_id: 'unit' });
  let [checks, wrong] = [0, 0];
  for (let step = 0; step < MOST_STEPS; step++) {
    const { advice } = bench.item('unit')!;
    if (advice.do === 'check') {
      const check = advice.check!;
      checks += 1;
      if (check.kind === 'try')
        note('trial-done', {
          item_id: 'unit',
          function: check.target,
          outcome: player.works(check.target) ? 'works' : 'fails',
          with: check.with,
        });
      else if (check.kind === 'look') note('finding-noted', { item_id: 'unit', place: check.target, sees: 'nothing-wrong' });
      else note('reading-taken', { item_id: 'unit', point: check.target, mode: 'volts', value: player.volts(POINT_OF[check.target]!) });
    } else if (advice.do === 'remedy') {
      const spec = bench.model('mine')!.file.remedies.find(({ id }) => id === advice.remedy!.id)!;
      const faults = bench.model('mine')!.file.faults;
      if (Object.keys(spec.mends).some((id) => faults.find((fault) => fault.id === id)!.block === player.block)) return { checks, wrong };
      wrong += 1;
      note('remedy-done', { item_id: 'unit', remedy: spec.id, minutes: 5, outcome: 'not-mended' });
    } else return null;
  }
  return null;
}

describe('a model of the Corrie CP-4 that knows it as a pocket player with four points', () => {
  it('is at level 1', () => {
    expect(ownModel().bench.model('mine')!.file.level).toBe(1);
  });

  it(`leads to the block at fault for ${SOLVED_SHARE} of ${TRIED} seeded faults of its circuit, or more`, () => {
    const corrie = models.get('corrie-cp4')!;
    const faults = SeededPlayer.candidates(corrie);
    expect(faults.length).toBeGreaterThan(50);
    const random = randomStream('own model, measured');
    const picked = Array.from({ length: TRIED }, () => faults[Math.floor(random() * faults.length)]!);
    const solved = picked.map((fault) => solve(new SeededPlayer(corrie, fault))).filter((each) => each !== null);
    expect(solved.length / TRIED).toBeGreaterThanOrEqual(SOLVED_SHARE);
    expect(Math.max(...solved.map(({ checks }) => checks))).toBeLessThan(MOST_STEPS);
  });
});
