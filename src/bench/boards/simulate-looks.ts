import {
  compileCircuit,
  drawBoards,
  powered,
  unpowered,
  type Circuit,
  type Draw,
  type FaultSet,
  type PoweredPoint,
  type UnpoweredPoint,
} from '../../core/circuit/index.ts';
import { randomStream } from '../../core/numeric/index.ts';
import { circuitInState, type Model } from '../models/index.ts';
import { keyOfLook, type Look } from './look.ts';

/** A model's circuit made ready: compiled once, with the drawn boards of all its readings. */
export interface ReadyBoards {
  readonly model: Model;
  readonly circuit: Circuit;
  readonly draws: readonly Draw[];
}

/** The same draws for the same model, on every machine. */
export function readyBoards(model: Model, draws: number): ReadyBoards {
  const { netlist } = model.circuit!;
  return { model, circuit: compileCircuit(netlist), draws: drawBoards(netlist, draws, randomStream(`boards of ${model.file.id}`)) };
}

/** Readings of each set of faults on each drawn board: set by set, draw by draw, look by look. Infinity is OL, NaN was not found. */
export function simulateLooks(ready: ReadyBoards, sets: readonly FaultSet[], looks: readonly Look[]): Float64Array {
  const { draws } = ready;
  const values = new Float64Array(sets.length * draws.length * looks.length);
  for (const columns of alike(looks).values()) {
    const distinct = [...new Map(columns.map((at) => [keyOfLook(looks[at]!), looks[at]!])).values()];
    const found = simulateAlike(ready, sets, distinct);
    const place = new Map(distinct.map((look, i) => [keyOfLook(look), i]));
    for (let row = 0; row < sets.length * draws.length; row++)
      for (const at of columns) values[row * looks.length + at] = found[row * distinct.length + place.get(keyOfLook(looks[at]!))!]!;
  }
  return values;
}

/** Places of the looks of one power state and way of measuring. */
function alike(looks: readonly Look[]): Map<string, number[]> {
  const groups = new Map<string, number[]>();
  looks.forEach(({ mode, state, held = [] }, at) => {
    const key = `${mode === 'volts' || mode === 'amps' ? 'fed' : 'off'} ${state} ${held.join()}`;
    groups.set(key, [...(groups.get(key) ?? []), at]);
  });
  return groups;
}

function simulateAlike({ model, circuit, draws }: ReadyBoards, sets: readonly FaultSet[], looks: readonly Look[]): Float64Array {
  const [{ mode, state, held = [] }] = looks as readonly [Look, ...Look[]];
  const spec = model.file.circuit!.states.find(({ id }) => id === state)!;
  const { conditions, power } = circuitInState(model.circuit!, spec);
  const switches = Object.fromEntries(held.map((name) => [name, 'on' as const]));
  if (mode === 'volts' || mode === 'amps') {
    const points = looks.map(({ red, black, supply }): PoweredPoint => (supply === undefined ? { red, black } : { supply }));
    return powered(circuit, sets, draws, { state: { ...power, switches }, points, baseline: conditions }).values;
  }
  const points = looks.map((look): UnpoweredPoint => ({ red: look.red, black: look.black, mode: look.mode as 'ohms' | 'diode' }));
  return unpowered(circuit, sets, draws, { points, baseline: conditions, switches }).values;
}
