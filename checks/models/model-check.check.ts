import { beforeAll, describe, expect, it } from 'vitest';
import { openBench } from '../../src/bench/index.ts';
import type { Model } from '../../src/bench/models/index.ts';
import { memoryStore } from '../../src/bench/testing/memory-store.ts';
import type { ModelCheckView } from '../../src/bench/views/index.ts';
import { level2Models } from './level-2-board.ts';

let tern: Model;
beforeAll(async () => {
  tern = (await level2Models()).get('tern-tn20')!;
});

const clock = { now: () => new Date('2026-03-01T10:00:00Z'), newId: () => '019f0000-0000-7000-8000-000000000001' };

/** The check of the Tern TN-20 with its netlist edited. */
function checked(
  edit: (parts: NonNullable<Model['circuit']>['netlist']['parts']) => NonNullable<Model['circuit']>['netlist']['parts'],
): ModelCheckView {
  const circuit = tern.circuit!;
  const model: Model = { ...tern, circuit: { ...circuit, netlist: { ...circuit.netlist, parts: edit(circuit.netlist.parts) } } };
  const bench = openBench({ store: memoryStore(), models: new Map([['tern-tn20', model]]), clock, device: 'bench-1', version: '0' });
  return bench.checkModel('tern-tn20', () => false)!;
}

describe('the check of the Tern TN-20', () => {
  it('finds nothing odd in the netlist that ships, held against its own readings of good boards', () => {
    const check = checked((parts) => parts);
    expect(check.compared).toBe(16);
    expect(check.odd).toEqual([]);
    expect(check.mistakes).toEqual([]);
    expect(check.functions.every(({ by }) => by === 'circuit' || by === 'blocks')).toBe(true);
    expect(check.functions.find(({ id }) => id === 'starts')?.by).toBe('circuit');
    expect(check.functions.find(({ id }) => id === 'closes')?.by).toBe('blocks');
    expect(check.unknown_loads).toEqual([]);
  });

  it('names the divider of RST where its upper resistor is drawn as 10 M', () => {
    const check = checked((parts) => parts.map((part) => (part.name === 'R12' ? { ...part, value: 1e7 } : part)));
    expect(check.odd.map(({ point }) => point)).toContain('RST');
    expect(check.mistakes.slice(0, 3).map(({ net }) => net)).toContain('rst');
    expect(check.mistakes[0]!.next).toMatch(/^(Read the mark|Look|Measure)/);
  });

  it('is stopped before every mistake was thought of, and goes on when it is asked again', () => {
    const circuit = tern.circuit!;
    const netlist = {
      ...circuit.netlist,
      parts: circuit.netlist.parts.map((part) => (part.name === 'R12' ? { ...part, value: 1e7 } : part)),
    };
    const models = new Map([['tern-tn20', { ...tern, circuit: { ...circuit, netlist } }]]);
    const bench = openBench({ store: memoryStore(), models, clock, device: 'bench-1', version: '0' });
    const first = bench.checkModel('tern-tn20', () => true)!;
    expect(first).toMatchObject({ thought: 0, mistakes: [] });
    let asked = 0;
    const second = bench.checkModel('tern-tn20', () => asked++ > 0)!;
    expect(second.thought).toBeGreaterThan(0);
    expect(second.thought).toBeLessThan(second.to_think);
    expect(bench.checkModel('nothing', () => true)).toBeNull();
  });
});
