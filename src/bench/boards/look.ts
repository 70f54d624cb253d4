import type { MeterMode } from '../events/index.ts';
import type { CircuitSpec, ModelCircuit } from '../models/index.ts';
import type { BoardPoint } from './board-knowledge.ts';

/** One thing that a meter could be asked of a board: a mode, a power state, and where the leads are. */
export interface Look {
  readonly mode: MeterMode;
  readonly state: string;
  readonly red: string;
  readonly black: string;
  /** For amps. */
  readonly supply?: string;
  /** Parts of the netlist that are closed contacts meanwhile. */
  readonly held?: readonly string[];
}

export const keyOfLook = ({ mode, state, red, black, supply = '', held = [] }: Look): string =>
  `${mode} ${state} ${red} ${black} ${supply} ${held.join()}`;

/** What is measured at a point. */
export function lookAt(point: BoardPoint, circuit: ModelCircuit): Look {
  const { mode, power: state, red, black, supply, held } = point;
  const elements = held === undefined ? [] : (circuit.parts.find(({ ref }) => ref === held)?.elements ?? []);
  return { mode, state, red, black, ...(supply === undefined ? {} : { supply }), ...(elements.length > 0 ? { held: elements } : {}) };
}

/** What the needs of a function look at. */
export const looksOfFunction = ({ state, needs }: CircuitSpec['functions'][string]): Look[] =>
  needs.flatMap((need): Look[] => {
    if ('part' in need) return [];
    if ('rail' in need) return [{ mode: 'volts', state: need.state ?? state, red: need.rail, black: '0' }];
    if ('volts' in need) return [{ mode: 'volts', state: need.state ?? state, red: need.volts, black: need.to ?? '0' }];
    if ('amps' in need) return [{ mode: 'amps', state: need.state ?? state, red: '0', black: '0', supply: need.amps }];
    return [{ mode: 'ohms', state: need.state ?? 'off', red: need.ohms, black: need.to ?? '0' }];
  });
