import { beforeAll, describe, expect, it } from 'vitest';
import { circuitInState, componentRoles, placementOf, type Model } from '../../src/bench/models/index.ts';
import {
  asWritten,
  compileCircuit,
  currentOut,
  faultUniverse,
  inPowerState,
  operatingPoint,
  type CircuitFault,
} from '../../src/core/circuit/index.ts';
import { randomStream } from '../../src/core/numeric/index.ts';
import { LEVEL_2, Level2Board, level2Models } from './level-2-board.ts';

let models: ReadonlyMap<string, Model>;
beforeAll(async () => void (models = await level2Models()));
const healthy = (id: string): Level2Board => new Level2Board(models.get(id)!);

const voltsIn = (board: Level2Board, state: string) => {
  const { circuit, x } = board.solve(state);
  return (node: string): number => (node === '0' ? 0 : x[circuit.nodeIndex.get(node)!]!);
};

describe('a healthy board at level 2', () => {
  it.each(LEVEL_2)('%s has every rail within two per cent of its nominal voltage, and none while nothing feeds it', (id) => {
    const board = healthy(id);
    const [fed, idle] = [voltsIn(board, 'battery'), voltsIn(board, 'off')];
    const rails = Object.entries(board.spec.rails);
    expect(rails.length).toBeGreaterThanOrEqual(4);
    for (const [rail, nominal] of rails) {
      expect(Math.abs(fed(rail) / nominal - 1), `${rail} ${fed(rail)}`).toBeLessThan(0.02);
      expect(Math.abs(idle(rail)), rail).toBeLessThan(0.01);
    }
  });

  it.each([
    ['tern-tn20', 'battery', 'XBT1', 0.25, 0.4],
    ['tern-tn20', 'keys-held', 'XBT1', 0.25, 0.4],
    ['tern-tn20', 'linked', 'XBT1', 0.25, 0.4],
    ['tern-tn20', 'charger', 'VCHG', 0.4, 0.5],
    ['tern-tn20', 'charger', 'XBT1', -0.5, -0.4],
    ['tern-tn20', 'charger-run', 'VCHG', 0.2, 0.4],
    ['tern-tn20', 'charger-idle', 'VCHG', 0, 0.002],
    ['corrie-cp4', 'battery', 'XBT1', 0.07, 0.11],
    ['corrie-cp4', 'inlet', 'VSUP', 0.07, 0.11],
  ])('%s in the state %s takes a plausible current from %s', (id, state, supply, low, high) => {
    const { circuit, conditions, x } = healthy(id).solve(state);
    const ampere = currentOut(circuit, conditions, circuit.partIndex.get(supply.toLowerCase())!, x);
    expect(ampere).toBeGreaterThanOrEqual(low);
    expect(ampere).toBeLessThanOrEqual(high);
  });

  /** Most heat of a part by its package, W: half to three quarters of what such parts are sold for (common practice, no source). */
  const MOST_W: Readonly<Record<string, number>> = { '0603': 0.07, '0805': 0.09, '1206': 0.18 };

  it.each(LEVEL_2)('%s burns no resistor in any state', (id) => {
    const board = healthy(id);
    const resistors = board.circuit.parts.filter((part) => MOST_W[part.package] !== undefined && /^(R|F|FB)\d/.test(part.ref));
    expect(resistors.length).toBeGreaterThanOrEqual(5);
    for (const state of board.spec.states) {
      const volts = voltsIn(board, state.id);
      for (const { ref, elements, package: name } of resistors) {
        const part = board.circuit.netlist.parts.find((each) => each.name === elements[0])!;
        const watt = (volts(part.nodes[0]!) - volts(part.nodes[1]!)) ** 2 / part.value;
        expect(watt, `${ref} ${state.id}`).toBeLessThan(MOST_W[name]!);
      }
    }
  });

  it.each(LEVEL_2)('%s reads at every point what the known-good boards read, within ten per cent', (id) => {
    const board = healthy(id);
    for (const { id: point } of board.model.file.points) {
      const values = board.model.readings.filter((reading) => reading.point === point).map(({ value }) => value!);
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      expect(Math.abs(board.reading(point)! / mean - 1), `${point}: ${board.reading(point)} against ${mean}`).toBeLessThan(0.1);
    }
  });

  it.each(LEVEL_2)('%s does everything that its circuit tells of', (id) => {
    const board = healthy(id);
    const functions = Object.keys(board.spec.functions);
    expect(functions.filter((fn) => !board.works(fn))).toEqual([]);
    // What the circuit does not tell of is told by blocks alone: the shell.
    expect(board.model.file.functions.map((fn) => fn.id).filter((fn) => !functions.includes(fn))).toEqual(['closes']);
  });
});

describe('a faulty board at level 2', () => {
  const universe = (id: string): CircuitFault[] => {
    const circuit = models.get(id)!.circuit!;
    const roles = componentRoles(circuit);
    return faultUniverse(circuit.netlist, placementOf(circuit), { roleOf: (ref) => roles.get(ref) });
  };

  it.each<[string, string, string[]]>([
    ['tern-tn20', 'f1:open', ['starts', 'runs-on-battery', 'runs-on-charger', 'picture', 'light', 'sound', 'keys', 'reads-slot', 'link']],
    ['tern-tn20', 'j4_1:open', ['runs-on-charger', 'charges']],
    ['tern-tn20', 'j5_2:open', ['charges']],
    ['tern-tn20', 'd3:open', ['charges']],
    ['tern-tn20', 'd5:open', ['starts', 'runs-on-charger']],
    ['tern-tn20', 'j3_2:open', ['picture']],
    ['tern-tn20', 'l2:open', ['light']],
    ['tern-tn20', 'j6_1:open', ['light']],
    ['tern-tn20', 'u3:dead', ['sound']],
    ['tern-tn20', 'c26:open', ['sound']],
    ['tern-tn20', 'ls1:open', ['sound']],
    ['tern-tn20', 'k3:open', ['keys']],
    ['tern-tn20', 'k3:short', ['keys']],
    ['tern-tn20', 'j1_7:open', ['reads-slot']],
    ['tern-tn20', 'fb2:open', ['reads-slot']],
    ['tern-tn20', 'j2_2:open', ['link']],
    ['tern-tn20', 'j1_12:open', ['reads-slot']],
    ['tern-tn20', 'j3_6:open', ['picture']],
    ['tern-tn20', 'c9:open', []],
    ['corrie-cp4', 's1:open', ['turns', 'runs-on-inlet', 'steady', 'winds', 'plays', 'hiss']],
    ['corrie-cp4', 'bc2:open', ['turns', 'steady', 'winds', 'plays', 'hiss']],
    ['corrie-cp4', 'j1_1:open', ['runs-on-inlet']],
    ['corrie-cp4', 'c3:leaky', ['turns', 'runs-on-inlet', 'steady', 'winds', 'plays']],
    ['corrie-cp4', 'j4_1:open', ['plays']],
    ['corrie-cp4', 'j2_3:open', ['plays', 'hiss']],
  ])('%s with %s does not do %j, and all the rest', (id, faultId, lost) => {
    const fault = universe(id).find((each) => each.id === faultId);
    expect(fault, faultId).toBeDefined();
    const board = new Level2Board(models.get(id)!, [fault!]);
    expect(Object.keys(board.spec.functions).filter((fn) => !board.works(fn))).toEqual(lost);
  });

  it.each([
    ['tern-tn20', 400],
    ['corrie-cp4', 120],
  ])('%s can be thought of with at least %i faults, each at a block of the model', (id, count) => {
    const faults = universe(id);
    expect(faults.length).toBeGreaterThanOrEqual(count);
    const refs = new Set(models.get(id)!.circuit!.parts.map(({ ref }) => ref.toLowerCase()));
    expect(faults.flatMap(({ components }) => components).filter((ref) => !refs.has(ref))).toEqual([]);
  });

  it.each(LEVEL_2)('%s settles in every state with any of thirty opens and shorts', (id) => {
    const { circuit, spec } = healthy(id);
    const random = randomStream(`opens and shorts of ${id}`);
    const compiled = compileCircuit(circuit.netlist);
    for (const state of spec.states) {
      const { conditions, power } = circuitInState(circuit, state);
      const fed = inPowerState(circuit.netlist, conditions, power);
      const start = operatingPoint(compiled, fed);
      if (!start.ok) throw new Error(`${state.id} does not settle`);
      for (let i = 0; i < 30; i++) {
        const at = Math.floor(random() * circuit.netlist.parts.length);
        const faulty = { ...fed, removed: fed.removed.slice(), bridge: asWritten(circuit.netlist).bridge };
        if (random() < 0.5) faulty.removed[at] = 1;
        else faulty.bridge[at] = 2;
        expect(operatingPoint(compiled, faulty, start.x), `${circuit.netlist.parts[at]!.name} in ${state.id}`).toMatchObject({ ok: true });
      }
    }
  });
});
