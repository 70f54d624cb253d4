import {
  compileCircuit,
  drawBoards,
  faultUniverse,
  HANDHELD_METER,
  meterError,
  powered,
  unpowered,
  type CircuitFault,
  type FaultSet,
} from '../../../core/circuit/index.ts';
import { kernelsOf, type ReadingFault } from '../../../core/diagnosis/readings/index.ts';
import { randomStream } from '../../../core/numeric/index.ts';
import { circuitInState, componentRoles, needHolds, placementOf, type Model } from '../../models/index.ts';
import type { BoardFault, BoardKnowledge, BoardPoint, Boards } from '../board-knowledge.ts';

export interface SimulatedOptions {
  readonly draws: number;
  /** Which faults of the universe are thought of. */
  readonly faults: (fault: CircuitFault) => boolean;
  /** Nets that can be measured against ground in volts (state of the functions) and ohms (`off`), beside the points of the file. */
  readonly nets: readonly string[];
  /** The power state of those volts. */
  readonly state: string;
  /** So many of the rows are known; all by default. */
  readonly done?: number;
}

type Look = { readonly mode: 'volts' | 'ohms' | 'diode'; readonly state: string; readonly red: string; readonly black: string };

/** Boards of a model, simulated at once on few draws: for tests. Currents are not simulated: a need of one holds, and a point of one is left out. */
export function simulatedBoards(model: Model, options: SimulatedOptions): Boards {
  const made = new Map<string, BoardKnowledge | null>();
  return {
    knowledge: (asked, confirmed) => {
      if (asked.file.id !== model.file.id) return null;
      const key = confirmed.join(' ');
      const known = made.get(key) ?? knowledgeOf(model, options, confirmed);
      made.set(key, known);
      return known;
    },
  };
}

function knowledgeOf(model: Model, options: SimulatedOptions, confirmed: readonly string[]): BoardKnowledge {
  const circuitFaults = universeOf(model).filter(options.faults);
  const faults = circuitFaults.map((fault) => boardFault(model, fault));
  const points = pointsOf(model, options);
  const already = circuitFaults.filter(({ id }) => confirmed.includes(id));
  const sets = [[], ...circuitFaults.map((fault) => [fault])].map((set) => [...new Set([...already, ...set])]);
  const needs = Object.entries(model.file.circuit!.functions);
  const looks = [...points.map(({ look }) => look), ...needs.flatMap(([, spec]) => looksOf(spec))];
  const read = simulate(model, sets, options.draws, looks);
  const dictionary = {
    faults: faults.map(({ id, block, refs, rate }): ReadingFault => ({ id, block, part: refs[0] ?? id, rate })),
    points: points.map(({ point }) => point),
    draws: options.draws,
    values: new Float64Array(sets.length * options.draws * points.length),
  };
  const rows = options.done ?? sets.length;
  for (let row = 0; row < sets.length; row++)
    for (let d = 0; d < options.draws; d++)
      points.forEach(({ look }, p) => {
        dictionary.values[(row * options.draws + d) * points.length + p] = row < rows ? read(look, row, d) : NaN;
      });
  const functions = new Map(needs.map(([name, spec]) => [name, worksBy(model, spec, sets, options.draws, rows, read)]));
  const kernels = kernelsOf(dictionary, (mode, value) => meterError(HANDHELD_METER, mode, value));
  const hash = `${model.file.id} ${confirmed.join(' ')}`;
  return { hash, faults, points: points.map(({ point }) => point), baseline: { kernels, functions }, done: rows, rows: sets.length };
}

function universeOf({ circuit }: Model): CircuitFault[] {
  const roles = componentRoles(circuit!);
  const blocks = new Map(circuit!.parts.map((part) => [part.ref.toLowerCase(), part.block]));
  return faultUniverse(circuit!.netlist, placementOf(circuit!), { roleOf: (ref) => roles.get(ref), blockOf: (ref) => blocks.get(ref) });
}

function boardFault({ circuit }: Model, fault: CircuitFault): BoardFault {
  const written = new Map(circuit!.parts.map(({ ref }) => [ref.toLowerCase(), ref]));
  const refs = fault.components.map((name) => written.get(name.toLowerCase()) ?? name);
  const name = `${refs.join(', ')}: ${fault.kind}`;
  return { id: fault.id, name, block: fault.block!, refs, nets: fault.nets, rate: fault.rate, circuit: fault };
}

function pointsOf({ file }: Model, { nets, state }: SimulatedOptions): { point: BoardPoint; look: Look }[] {
  const named = file.points.flatMap((point) => {
    const { red, black = '0', state: own = point.power } = file.circuit!.points[point.id] ?? {};
    if (point.mode === 'amps' || red === undefined) return [];
    const at = {
      id: point.id,
      name: point.name,
      mode: point.mode,
      minutes: 1,
      side: point.side,
      stage: point.stage,
      power: own,
      red,
      black,
    };
    return [{ point: { ...at, named: true }, look: { mode: point.mode, state: own, red, black } }];
  });
  const more = nets.flatMap((net) =>
    (['volts', 'ohms'] as const).map((mode) => {
      const power = mode === 'volts' ? state : 'off';
      const at = { id: `${net}.${mode}`, name: `${net.toUpperCase()} in ${mode}`, minutes: 0.6, side: 'front' as const, power, red: net };
      return {
        point: { ...at, mode, stage: 'board-out' as const, black: '0', named: false },
        look: { mode, state: power, red: net, black: '0' },
      };
    }),
  );
  return [...named, ...more];
}

type FunctionSpec = NonNullable<Model['file']['circuit']>['functions'][string];

const looksOf = ({ state, needs }: FunctionSpec): Look[] =>
  needs.flatMap((need): Look[] => {
    if ('rail' in need) return [{ mode: 'volts', state: need.state ?? state, red: need.rail, black: '0' }];
    if ('volts' in need) return [{ mode: 'volts', state: need.state ?? state, red: need.volts, black: need.to ?? '0' }];
    return 'ohms' in need ? [{ mode: 'ohms', state: need.state ?? 'off', red: need.ohms, black: need.to ?? '0' }] : [];
  });

type Read = (look: Look, row: number, draw: number) => number;

function worksBy(
  model: Model,
  spec: FunctionSpec,
  sets: readonly (readonly CircuitFault[])[],
  draws: number,
  rows: number,
  read: Read,
): Float32Array {
  const needs = spec.needs.filter((need) => !('amps' in need));
  return Float32Array.from({ length: sets.length * draws }, (_, i) => {
    const [row, draw] = [Math.floor(i / draws), i % draws];
    if (row >= rows) return NaN;
    const at =
      (mode: Look['mode']) =>
      (red: string, black: string, state: string): number | null => {
        const value = read({ mode, state, red, black }, row, draw);
        return Number.isFinite(value) ? value : null;
      };
    const partWell = (ref: string): boolean => sets[row]!.every(({ components }) => !components.includes(ref.toLowerCase()));
    const look = { volts: at('volts'), ohms: at('ohms'), amps: () => null, partWell };
    return Number(needs.every((need) => needHolds(need, spec.state, model.file.circuit!, look)));
  });
}

/** Simulates all looks, those of one state and way together. */
function simulate({ circuit, file }: Model, sets: readonly FaultSet[], draws: number, looks: readonly Look[]): Read {
  const compiled = compileCircuit(circuit!.netlist);
  const boards = drawBoards(circuit!.netlist, draws, randomStream('boards of a test'));
  const groups = new Map<string, { readonly looks: Look[]; values: Float64Array }>();
  for (const look of looks) {
    const group = groups.get(groupOf(look)) ?? { looks: [], values: new Float64Array() };
    if (!group.looks.some((other) => keyOf(other) === keyOf(look))) group.looks.push(look);
    groups.set(groupOf(look), group);
  }
  for (const group of groups.values()) {
    const { state, mode } = group.looks[0]!;
    const { conditions, power } = circuitInState(
      circuit!,
      file.circuit!.states.find(({ id }) => id === state)!,
    );
    const points = group.looks.map(({ red, black, mode: own }) => ({ red, black, mode: own as 'ohms' | 'diode' }));
    const fed = mode === 'volts';
    group.values = fed
      ? powered(compiled, sets, boards, { state: power, points, baseline: conditions }).values
      : unpowered(compiled, sets, boards, { points, baseline: conditions }).values;
  }
  return (look, row, draw) => {
    const { looks: own, values } = groups.get(groupOf(look))!;
    return values[(row * draws + draw) * own.length + own.findIndex((other) => keyOf(other) === keyOf(look))]!;
  };
}

const groupOf = ({ mode, state }: Look): string => `${mode === 'volts' ? 'fed' : 'off'} ${state}`;
const keyOf = ({ mode, state, red, black }: Look): string => `${mode} ${state} ${red} ${black}`;
