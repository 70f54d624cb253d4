import { beforeAll, describe, expect, it } from 'vitest';
import type { Boards } from '../../src/bench/boards/board-knowledge.ts';
import { simulatedBoards } from '../../src/bench/boards/testing/simulated-boards.ts';
import type { Bench } from '../../src/bench/index.ts';
import { openBench } from '../../src/bench/index.ts';
import type { Model } from '../../src/bench/models/index.ts';
import { memoryStore } from '../../src/bench/testing/memory-store.ts';
import type { CheckView } from '../../src/bench/views/index.ts';
import { level2Models } from './level-2-board.ts';

/** Blocks of which faults are thought of, and nets that are measured beside the points of the file: enough to find a rail that is pulled down, on few boards. */
const BLOCKS = ['battery-socket', 'fuse', 'switch', 'converter', 'regulator'];
const NETS = ['vbat', 'vpath', 'vsys', 'v50', 'v33', 'en33', 'v18'];
const DRAWS = 3;
const FAULT = 'c12:short';

let model: Model;
let boards: Boards;
let models: ReadonlyMap<string, Model>;
beforeAll(async () => {
  models = await level2Models();
  model = models.get('tern-tn20')!;
  boards = simulatedBoards(model, { draws: DRAWS, faults: ({ block }) => BLOCKS.includes(block ?? ''), nets: NETS, state: 'battery' });
});

/** A Tern TN-20 on the bench, opened, that does not start. */
function ternOnBench(): Bench {
  let hour = 0;
  let count = 0;
  const clock = {
    now: () => new Date(Date.UTC(2026, 0, 1, hour++)),
    newId: () => `019f0000-0000-7000-8000-${String(++count).padStart(12, '0')}`,
  };
  const bench = openBench({ store: memoryStore(), models, boards, clock, device: 'bench-1', version: '0' });
  const item = { item_id: 'tern', name: 'Tern', model_id: 'tern-tn20', expected_value_minor: 2000 };
  const lot = { lot_id: 'lot', title: 'A dead Tern', seller: 'marsh-lane', price_minor: 1500, currency: 'GBP', items: [item] };
  record(bench, 'lot-bought', lot);
  record(bench, 'item-received', { item_id: 'tern' });
  record(bench, 'trial-done', { item_id: 'tern', function: 'starts', outcome: 'fails' });
  record(bench, 'opened-to', { item_id: 'tern', stage: 'board-out' });
  return bench;
}

function record(bench: Bench, kind: string, body: object): void {
  const result = bench.record([{ kind, body }]);
  if (!result.ok) throw new Error(`${kind}: ${result.message}`);
}

/** What the second drawn board with these faults reads; null is OL. */
function reads(point: string, fault: string | null): number | null {
  const { faults, baseline } = boards.knowledge(model, [])!;
  const { points, values, draws } = baseline.kernels.dictionary;
  const row = fault === null ? 0 : 1 + faults.findIndex(({ id }) => id === fault);
  const value = values[(row * draws + 1) * points.length + points.findIndex(({ id }) => id === point)]!;
  return value === Infinity ? null : Number(value.toPrecision(4));
}

function answer(bench: Bench, check: CheckView): void {
  const tern = { item_id: 'tern' };
  if (check.kind === 'measure')
    record(bench, 'reading-taken', { ...tern, point: check.target, mode: check.mode, value: reads(check.target, FAULT) });
  else if (check.kind === 'look') record(bench, 'finding-noted', { ...tern, place: check.target, sees: 'nothing-wrong' });
  else record(bench, 'trial-done', { ...tern, function: check.target, outcome: 'fails', with: check.with });
}

/** Answers every check that the bench asks for; how many it took. */
function follow(bench: Bench): number {
  for (let asked = 0; asked < 12; asked++) {
    const { advice } = bench.item('tern')!;
    if (advice.do !== 'check') return asked;
    answer(bench, advice.check!);
  }
  throw new Error('it asks on and on');
}

describe('a shorted capacitor of a Tern TN-20', () => {
  it('is found by the readings that the bench asks for, and worked on where it is', () => {
    const bench = ternOnBench();
    expect(follow(bench)).toBeLessThanOrEqual(6);
    const { belief, advice } = bench.item('tern')!;
    const [most] = belief.hypotheses;
    expect([...most!.faults, ...most!.alike].map(({ id }) => id)).toContain(FAULT);
    expect(most!.chance).toBeGreaterThan(0.8);
    expect(advice.do).toBe('remedy');
    expect([advice.remedy!, ...advice.other_remedies].map(({ id }) => id)).toContain('replace.C12');
    expect(advice.remedy!.cautions).toContain('hot-tool');
  });

  it('is gone from the belief once it was replaced and the rail reads well', () => {
    const bench = ternOnBench();
    follow(bench);
    record(bench, 'remedy-done', { item_id: 'tern', remedy: 'replace.C12', minutes: 10, outcome: 'not-tried-yet' });
    record(bench, 'reading-taken', { item_id: 'tern', point: 'v18.volts', mode: 'volts', value: reads('v18.volts', null) });
    const { belief, log } = bench.item('tern')!;
    const still = belief.hypotheses.filter(({ faults }) => faults.some(({ id }) => id === FAULT));
    expect(still.reduce((sum, { chance }) => sum + chance, 0)).toBeLessThan(0.02);
    expect(log.map(({ text }) => text).join(' ')).toContain('Replace C12');
  });

  it('is not looked for with points that the circuit lacks, and no part is worked on that is not on the board', () => {
    const bench = ternOnBench();
    const tern = { item_id: 'tern' };
    const point = bench.record([{ kind: 'reading-taken', body: { ...tern, point: 'nowhere.volts', mode: 'volts', value: 1 } }]);
    expect(point).toMatchObject({ ok: false, code: 'unknown-point' });
    const remedy = bench.record([{ kind: 'remedy-done', body: { ...tern, remedy: 'replace.C999', minutes: 1, outcome: 'mended' } }]);
    expect(remedy).toMatchObject({ ok: false, code: 'unknown-remedy' });
    const mode = bench.record([{ kind: 'reading-taken', body: { ...tern, point: 'v33.volts', mode: 'ohms', value: 1 } }]);
    expect(mode).toMatchObject({ ok: false, code: 'wrong-mode' });
  });
});
