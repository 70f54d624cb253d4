import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { loadModels } from './load-models.ts';

const MODEL = `format: 1
id: lamp
name: Lamp
level: 2
currency: GBP
prices: { working: 900, spread: 0.2, for_parts: 100 }
opening_minutes: { open: 2, board_out: 2 }
blocks: [{ id: bulb, name: Bulb }]
functions: [{ id: light, name: Light, needs: [bulb] }]
faults: [{ id: bulb-open, name: Bulb open, block: bulb, mode: open, rate: 0.5 }]
points: [{ id: BULB, name: Bulb, block: bulb, mode: ohms }]
checks: [{ id: try, name: Try, minutes: 1, try: light }]
remedies: [{ id: new-bulb, name: New bulb, kind: replace, mends: { bulb-open: 0.9 }, minutes: 2 }]
circuit:
  netlist: board.cir
  placement: placement.csv
  states: [{ id: 'off', name: 'Off' }, { id: 'on', name: 'On', supplies: { VB: 3 } }]
  points: { BULB: { red: fed } }
  functions:
    light: { state: 'on', needs: [{ volts: fed, min: 2 }] }
`;
const NETLIST = 'lamp\nVB fed 0 3\nR1 fed 0 100\n';
const PLACEMENT = 'Ref,X,Y,Rotation,Side,Value,Package,Block\nB,,,,off,Cell,,bulb\nR1,5,5,0,front,100,0603,bulb\n';

let dir: string;
beforeEach(async () => {
  dir = await mkdtemp(join(tmpdir(), 'circuit-'));
  await mkdir(join(dir, 'lamp'));
});
afterEach(() => rm(dir, { recursive: true }));

async function load(model: string, netlist: string | Uint8Array | null = NETLIST, placement: string | null = PLACEMENT) {
  await writeFile(join(dir, 'lamp/model.yaml'), model);
  if (netlist !== null) await writeFile(join(dir, 'lamp/board.cir'), netlist);
  if (placement !== null) await writeFile(join(dir, 'lamp/placement.csv'), placement);
  return loadModels(dir);
}

describe('a model at level 2', () => {
  it('is loaded with its circuit', async () => {
    const { models, problems } = await load(MODEL);
    expect(problems).toEqual([]);
    const lamp = models.get('lamp')!;
    expect(lamp.file.level).toBe(2);
    expect(lamp.circuit!.parts.map(({ ref }) => ref)).toEqual(['B', 'R1']);
    expect(lamp.circuit!.netlist.nodes).toEqual(['fed']);
  });

  it.each<[string, Parameters<typeof load>, object]>([
    ['a netlist that is not there', [MODEL, null], { file: 'lamp/board.cir', line: 1, code: 'model-unreadable', field: 'the file' }],
    ['a placement that is not there', [MODEL, NETLIST, null], { file: 'lamp/placement.csv', line: 1, code: 'model-unreadable' }],
    ['a netlist that is not text', [MODEL, new Uint8Array([0xff, 0xfe])], { file: 'lamp/board.cir', code: 'model-unreadable' }],
    [
      'a mistake in the netlist',
      [MODEL, NETLIST.replace('100', '1q0')],
      { file: 'lamp/board.cir', line: 3, column: 10, code: 'model-netlist', field: 'the netlist' },
    ],
    [
      'a mistake in the placement',
      [MODEL, NETLIST, PLACEMENT.replace('front', 'frnt')],
      { file: 'lamp/placement.csv', line: 3, column: 1, code: 'model-placement', field: 'side' },
    ],
    [
      'a node that the netlist does not have',
      [MODEL.replace('red: fed', 'red: fdd')],
      { file: 'lamp/model.yaml', line: 18, column: 21, code: 'model-circuit', field: 'circuit.points.BULB.red' },
    ],
  ])('with %s is told of by file and line, and loaded at level 1', async (_, files, expected) => {
    const { models, problems } = await load(...files);
    expect(problems).toMatchObject([{ ok: false, model: 'lamp', ...expected }]);
    expect(problems[0]!.message).toMatch(/^[^A-Z].*[^.]$/);
    expect(problems[0]!.next).toMatch(/\.$/);
    expect(models.get('lamp')!.file.level).toBe(1);
    expect(models.get('lamp')!.circuit).toBeUndefined();
    expect(models.get('lamp')!.file.circuit).toBeUndefined();
  });

  it.each<[string, string, string, { line: number; field: string }]>([
    ['level 1 with a circuit', 'level: 2', 'level: 1', { line: 4, field: 'level' }],
    ['a path to another folder', 'netlist: board.cir', 'netlist: ../board.cir', { line: 15, field: 'circuit.netlist' }],
    ['no state "off"', "{ id: 'off', name: 'Off' }, ", '', { line: 17, field: 'circuit.states' }],
    ['a state given twice', "{ id: 'on', name: 'On',", "{ id: 'off', name: 'On',", { line: 17, field: 'circuit.states.1.id' }],
    ['an unknown state', "light: { state: 'on'", "light: { state: 'no'", { line: 20, field: 'circuit.functions.light.state' }],
    ['an unknown point', 'BULB: { red', 'BLUB: { red', { line: 18, field: 'circuit.points.BLUB' }],
    ['an unknown function', '    light: { state', '    lihgt: { state', { line: 20, field: 'circuit.functions.lihgt' }],
    ['leads for amps', 'mode: ohms', 'mode: amps', { line: 18, field: 'circuit.points.BULB' }],
    ['a need without a limit', 'volts: fed, min: 2', 'volts: fed', { line: 20, field: 'circuit.functions.light.needs.0' }],
    ['limits that exclude each other', 'min: 2 }', 'min: 2, max: 1 }', { line: 20, field: 'circuit.functions.light.needs.0' }],
    ['a node in capitals', 'volts: fed', 'volts: FED', { line: 20, field: 'circuit.functions.light.needs.0.volts' }],
  ])('with %s is refused by line and field', async (_, from, to, expected) => {
    expect(MODEL).toContain(from);
    const { models, problems } = await load(MODEL.replace(from, to));
    expect(models.has('lamp')).toBe(false);
    expect(problems).toContainEqual(expect.objectContaining({ ok: false, file: 'lamp/model.yaml', ...expected }));
  });

  it('without a circuit is refused', async () => {
    const { problems } = await load(MODEL.slice(0, MODEL.indexOf('circuit:')));
    expect(problems).toMatchObject([{ line: 4, field: 'level', message: 'is 2, but the file has no circuit' }]);
  });

  it('lends no circuit to one that is based on it', async () => {
    await mkdir(join(dir, 'torch'));
    await writeFile(join(dir, 'torch/model.yaml'), 'format: 1\nid: torch\nname: Torch\nlevel: 1\nbased_on: lamp\n');
    const { models, problems } = await load(MODEL);
    expect(problems).toEqual([]);
    expect(models.get('torch')!.file.circuit).toBeUndefined();
  });
});
