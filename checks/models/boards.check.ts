import { beforeAll, describe, expect, it } from 'vitest';
import { courtyardOf, padsOf, type Model, type ModelCircuit } from '../../src/bench/models/index.ts';
import { parseEngineering, refOf } from '../../src/core/circuit/index.ts';
import { LEVEL_2, level2Models } from './level-2-board.ts';

let models: ReadonlyMap<string, Model>;
beforeAll(async () => void (models = await level2Models()));
const circuitOf = (id: string): ModelCircuit => models.get(id)!.circuit!;

/** Nodes outside of chips, without ground. */
const outerNodes = ({ netlist }: ModelCircuit): string[] => netlist.nodes.filter((node) => !node.includes('.'));
const components = ({ parts }: ModelCircuit) => parts.filter((part) => part.package !== 'TP');
const onBoard = ({ parts }: ModelCircuit) => parts.flatMap((part) => (part.side === 'off' ? [] : [{ ...part, side: part.side }]));

describe('the boards of the models at level 2', () => {
  it.each([
    ['tern-tn20', { nodes: [95, 120], elements: [195, 260], parts: [120, 150] }],
    ['corrie-cp4', { nodes: [30, 45], elements: [60, 80], parts: [30, 42] }],
  ])('%s is of the size that its kind has', (id, wanted) => {
    const circuit = circuitOf(id);
    const found = { nodes: outerNodes(circuit).length, elements: circuit.netlist.parts.length, parts: components(circuit).length };
    for (const key of ['nodes', 'elements', 'parts'] as const) {
      expect(found[key], key).toBeGreaterThanOrEqual(wanted[key][0]!);
      expect(found[key], key).toBeLessThanOrEqual(wanted[key][1]!);
    }
  });

  it.each(LEVEL_2)('%s has each part of its netlist in its placement and the other way round, with the same value', (id) => {
    const { netlist } = circuitOf(id);
    const placed = components(circuitOf(id));
    expect([...new Set(netlist.parts.map(({ name }) => refOf(name)))].sort()).toEqual(placed.map(({ ref }) => ref.toLowerCase()).sort());
    const valued = placed.filter((part) => /^[RC]\d+$/.test(part.ref));
    expect(valued.length).toBeGreaterThan(15);
    for (const { ref, value } of valued) expect(parseEngineering(value), ref).toBe(netlist.parts.find(({ name }) => name === ref)!.value);
  });

  it.each(LEVEL_2)('%s has room for every part on its side, and no pad beside the board', (id) => {
    const { width_mm: width, height_mm: height } = models.get(id)!.file.board!;
    const rooms = onBoard(circuitOf(id)).map((part) => ({ ref: part.ref, side: part.side, ...courtyardOf(part) }));
    const apart = (p: number, q: number, sizes: number): boolean => Math.abs(p - q) * 2 >= sizes - 1e-6;
    const overlapping = rooms.flatMap((a, i) =>
      rooms
        .slice(i + 1)
        .flatMap((b) => (a.side !== b.side || apart(a.x, b.x, a.w + b.w) || apart(a.y, b.y, a.h + b.h) ? [] : [`${a.ref}, ${b.ref}`])),
    );
    expect(overlapping).toEqual([]);
    const pads = onBoard(circuitOf(id)).flatMap((part) => padsOf(part));
    expect(pads.filter((pad) => pad.x < 0 || pad.y < 0 || pad.x > width || pad.y > height)).toEqual([]);
  });

  it.each(LEVEL_2)('%s has two pads or more at every net that lies on the board', (id) => {
    const circuit = circuitOf(id);
    const pads = onBoard(circuit).flatMap((part) => padsOf(part));
    const off = new Set(circuit.parts.filter(({ side }) => side === 'off').map(({ ref }) => ref.toLowerCase()));
    const meetsOff = new Set(circuit.netlist.parts.filter(({ name }) => off.has(refOf(name))).flatMap(({ nodes }) => nodes));
    const nets = outerNodes(circuit).filter((node) => !meetsOff.has(node));
    expect(nets.length).toBeGreaterThan(20);
    const single = nets.filter((net) => pads.filter((pad) => pad.net === net).length < 2);
    expect(single).toEqual(id === 'corrie-cp4' ? ['rv2_free'] : []); // the end of the trimmer that is joined to nothing
  });

  it.each(LEVEL_2)('%s has a test point where the model says that one is, at the net where the model puts the lead', (id) => {
    const { points, circuit: spec } = models.get(id)!.file;
    const placed = new Map(onBoard(circuitOf(id)).flatMap((part) => (part.package === 'TP' ? [[part.value, part] as const] : [])));
    const drawn = points.filter((point) => point.at);
    expect(drawn.length).toBeGreaterThan(10);
    for (const { id: point, at } of drawn) {
      const part = placed.get(point)!;
      expect([part.x, part.y], point).toEqual(at);
      const { red, black } = spec!.points[point]!;
      // A point of a thing that hangs on wires (a motor) is at the pad of the wire.
      if (circuitOf(id).netlist.nodes.includes(part.nets[0]!) && !['VMOT', 'MOT-R'].includes(point))
        expect([red, black], point).toContain(part.nets[0]);
    }
  });
});
