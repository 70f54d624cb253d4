import { describe, expect, it } from 'vitest';
import { circuitInState } from './circuit-in-state.ts';
import { CircuitSpec } from './circuit-spec.ts';
import { componentRoles } from './component-roles.ts';
import { modelCircuit, type CircuitResult, type ModelCircuit } from './model-circuit.ts';
import type { ModelFile } from './schema.ts';

const file = { blocks: [{ id: 'lamp', name: 'Lamp' }], points: [] } satisfies Pick<ModelFile, 'blocks' | 'points'>;

const NETLIST = `lamp
XBT1 cell_p 0 BATTERY v=3
RJ1_1 cell_p plus 0.05
RS1 plus fed 0.1
R1 fed led 100
D1 led 0 DL
XU1 fed 0 chip
.subckt chip v gnd
XL1 v gnd LOAD i=10m
R1 v gnd 1k
.ends
.model DL D(IS=1e-18)`;

const PLACEMENT = [
  'Ref,X,Y,Rotation,Side,Value,Package,Block,Nets',
  'BT1,,,,off,Cell,,lamp,',
  'J1,5,5,0,front,Plug,WIRES-2,lamp,plus -',
  'S1,15,5,0,front,Switch,SWITCH-3,lamp,plus fed -',
  'R1,20,5,0,front,100,0603,lamp,',
  'D1,25,5,0,front,Lamp,0603,lamp,',
  'U1,30,10,0,front,Chip,SOT-23,lamp,fed 0 -',
  'TP1,35,5,0,front,LED,TP,lamp,led',
];

const SPEC = {
  netlist: 'board.cir',
  placement: 'placement.csv',
  rails: { fed: 3 },
  states: [
    { id: 'off', name: 'Off', set: { BT1: 'out' } },
    { id: 'on', name: 'On', supplies: { xbt1: 2.8 }, set: { RS1: 'out', R1: 50, U1: 'out' } },
  ],
  points: { LED: { red: 'led', state: 'on' } },
  functions: { light: { state: 'on', needs: [{ rail: 'fed', within: 0.1 }, { amps: 'XBT1', min: 0.01 }, { part: 'D1' }] } },
};

interface Changes {
  readonly netlist?: string;
  readonly placement?: readonly string[];
  readonly spec?: object;
}

function join({ netlist = NETLIST, placement = PLACEMENT, spec = {} }: Changes = {}): CircuitResult {
  const rows = placement.map((line, i) => ({ line: i + 1, cells: line.split(',') }));
  return modelCircuit(file, CircuitSpec.parse({ ...SPEC, ...spec }), netlist, { rows, commaIsDecimal: false });
}

function whole(): ModelCircuit {
  const result = join();
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.circuit;
}

const problemsOf = (changes: Changes) => {
  const result = join(changes);
  return result.ok ? { netlist: [], placement: [], model: [] } : result.problems;
};

describe('modelCircuit', () => {
  it('gives each reference its parts of the netlist and each pin its net', () => {
    expect(whole().parts.map(({ ref, elements, nets }) => [ref, elements.join(' '), nets.join(' ')])).toEqual([
      ['BT1', 'XBT1', ''],
      ['J1', 'RJ1_1', 'plus '],
      ['S1', 'RS1', 'plus fed '],
      ['R1', 'R1', 'fed led'],
      ['D1', 'D1', '0 led'], // pin 1 is the cathode
      ['U1', 'XU1.XL1 XU1.R1', 'fed 0 '],
      ['TP1', '', 'led'],
    ]);
  });

  it('is plain data, which comes back whole from JSON', () => {
    expect(JSON.parse(JSON.stringify(whole()))).toEqual(whole());
  });

  it('says what a component is where its package tells it', () => {
    expect(Object.fromEntries(componentRoles(whole()))).toEqual({ j1: 'contact', s1: 'contact' });
  });

  it('tells mistakes of the netlist with line and column', () => {
    expect(problemsOf({ netlist: NETLIST.replace('100', '100x4') })).toMatchObject({ netlist: [{ line: 5, column: 12, code: 'number' }] });
  });

  it('tells a part of the netlist that has no place, once for all that belong together', () => {
    const found = problemsOf({ placement: PLACEMENT.filter((line) => !line.startsWith('U1')) });
    expect(found).toMatchObject({ netlist: [{ line: 9, column: 1, code: 'unknown-name' }], placement: [], model: [] });
    expect(found.netlist[0]!.message).toContain('a part of U1, which the placement does not have');
  });

  const line = (from: string, to: string): readonly string[] => PLACEMENT.map((each) => (each.startsWith(from) ? to : each));
  it.each<[string, readonly string[], number, string]>([
    ['a part that the netlist lacks', [...PLACEMENT, 'R9,1,1,0,front,1k,0603,lamp,'], 9, 'ref'],
    ['a net that is not at the part', line('S1', 'S1,15,5,0,front,Switch,SWITCH-3,lamp,plus led -'), 4, 'nets'],
    ['a test point at no node', line('TP1', 'TP1,35,5,0,front,LED,TP,lamp,lead'), 8, 'nets'],
    ['pins that the netlist does not tell apart', line('U1', 'U1,30,10,0,front,Chip,SOT-23,lamp,'), 7, 'nets'],
    ['a resistor with three pins', line('R1', 'R1,20,5,0,front,100,SOT-23,lamp,'), 5, 'package'],
  ])('tells %s by line and field', (_, placement, at, field) => {
    expect(problemsOf({ placement })).toMatchObject({ netlist: [], placement: [{ code: 'model-placement', line: at, field }], model: [] });
  });

  it.each<[string, object, (string | number)[]]>([
    ['a rail', { rails: { fedd: 3 }, functions: {} }, ['rails', 'fedd']],
    ['a supply', { states: [{ id: 'on', name: 'On', supplies: { RS1: 3 } }] }, ['states', 0, 'supplies', 'RS1']],
    ['a part that is set', { states: [{ id: 'on', name: 'On', set: { R7: 'out' } }] }, ['states', 0, 'set', 'R7']],
    ['a value for several parts', { states: [{ id: 'on', name: 'On', set: { U1: 5 } }] }, ['states', 0, 'set', 'U1']],
    ['a value for a diode', { states: [{ id: 'on', name: 'On', set: { D1: 5 } }] }, ['states', 0, 'set', 'D1']],
    ['a value for a supply', { states: [{ id: 'on', name: 'On', set: { XBT1: 5 } }] }, ['states', 0, 'set', 'XBT1']],
    ['a lead', { points: { LED: { red: 'ledd' } } }, ['points', 'LED', 'red']],
    ['the supply of a point', { points: { LED: { supply: 'RS1' } } }, ['points', 'LED', 'supply']],
    [
      'a node in a need',
      { functions: { light: { state: 'on', needs: [{ volts: 'x', min: 1 }] } } },
      ['functions', 'light', 'needs', 0, 'volts'],
    ],
    [
      'the other node',
      { functions: { light: { state: 'on', needs: [{ ohms: 'led', to: 'x', min: 1 }] } } },
      ['functions', 'light', 'needs', 0, 'to'],
    ],
    [
      'a rail in a need',
      { functions: { light: { state: 'on', needs: [{ rail: 'led', within: 0.1 }] } } },
      ['functions', 'light', 'needs', 0, 'rail'],
    ],
    [
      'a reference in a need',
      { functions: { light: { state: 'on', needs: [{ part: 'U2' }] } } },
      ['functions', 'light', 'needs', 0, 'part'],
    ],
  ])('tells %s that the netlist does not have by its place in the model file', (_, spec, path) => {
    const { model, netlist, placement } = problemsOf({ spec });
    expect([netlist, placement]).toEqual([[], []]);
    expect(model).toMatchObject([{ ok: false, code: 'model-circuit', path: ['circuit', ...path] }]);
    expect(model[0]!.next).toMatch(/\.$/);
  });
});

describe('circuitInState', () => {
  const [off, on] = CircuitSpec.parse(SPEC).states;
  const indexOf = (name: string): number => whole().netlist.parts.findIndex((part) => part.name === name);

  it('scales what is given a value, takes out what is out, a reference with all its parts, and leaves the rest as written', () => {
    const { conditions, power } = circuitInState(whole(), on!);
    expect(power).toEqual({ supplies: { xbt1: 2.8 } });
    const removed = whole().netlist.parts.flatMap((part, i) => (conditions.removed[i] ? [part.name] : []));
    expect(removed).toEqual(['RS1', 'XU1.XL1', 'XU1.R1']);
    const scaled = whole().netlist.parts.flatMap((part, i) => (conditions.scale[i] === 1 ? [] : [[part.name, conditions.scale[i]]]));
    expect(scaled).toEqual([['R1', 0.5]]);
  });

  it('feeds nothing where the state names no supply', () => {
    const { conditions, power } = circuitInState(whole(), off!);
    expect(power).toEqual({ supplies: {} });
    expect(conditions.removed[indexOf('XBT1')]).toBe(1);
  });
});
