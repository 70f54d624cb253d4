import { knownHere, problem, type ModelProblem } from './problem.ts';
import type { ModelFile } from './schema.ts';

type Path = ModelProblem['path'];
type Circuit = NonNullable<ModelFile['circuit']>;

/** What the section `circuit` names that the rest of the file does not have; nodes and parts are looked up once the netlist is read. */
export function circuitProblems(file: ModelFile): ModelProblem[] {
  const { circuit, level } = file;
  if (!circuit) return level === 2 ? [withoutCircuit] : [];
  const wrongLevel =
    level === 2 ? [] : [problem('model-circuit', ['level'], `is ${level}, but the file has a circuit`, 'Write `level: 2`.')];
  return [...wrongLevel, ...twice(circuit), ...statesUsed(file, circuit), ...pointsUsed(file, circuit), ...functionsUsed(file, circuit)];
}

const withoutCircuit = problem(
  'model-circuit',
  ['level'],
  'is 2, but the file has no circuit',
  'Add the section `circuit`, or write `level: 1`.',
);

const twice = ({ states }: Circuit): ModelProblem[] =>
  states.flatMap(({ id }, i) => {
    const before = states.findIndex((state) => state.id === id);
    if (before === i) return [];
    const message = `gives the id "${id}" a second time; entry ${before + 1} of states has it already`;
    return [problem('model-duplicate-id', ['circuit', 'states', i, 'id'], message, 'Give one of the two another id, or take it out.')];
  });

/** Every place that names a power state, or needs one by its default. */
function statesUsed(file: ModelFile, circuit: Circuit): ModelProblem[] {
  const ids = circuit.states.map(({ id }) => id);
  const check = (state: string, path: Path): ModelProblem[] =>
    ids.includes(state) ? [] : [unknown(`names the power state "${state}", which is not in states`, state, ids, path)];
  return [
    ...check('off', ['circuit', 'states']),
    ...Object.entries(circuit.points).flatMap(([id, probe]) => {
      const point = file.points.find((known) => known.id === id);
      return check(probe.state ?? point?.power ?? 'off', ['circuit', 'points', id, ...(probe.state ? ['state'] : [])]);
    }),
    ...Object.entries(circuit.functions).flatMap(([id, { state, needs }]) => [
      ...check(state, ['circuit', 'functions', id, 'state']),
      ...needs.flatMap((need, i) =>
        'state' in need && need.state ? check(need.state, ['circuit', 'functions', id, 'needs', i, 'state']) : [],
      ),
    ]),
  ];
}

function pointsUsed(file: ModelFile, { points }: Circuit): ModelProblem[] {
  return Object.entries(points).flatMap(([id, probe]) => {
    const path = ['circuit', 'points', id];
    const point = file.points.find((known) => known.id === id);
    if (!point) {
      const ids = file.points.map((known) => known.id);
      return [unknown(`names the point "${id}", which is not in points`, id, ids, path)];
    }
    const needed = point.mode === 'amps' ? 'supply' : 'red';
    const strange = point.mode === 'amps' ? (['red', 'black'] as const) : (['supply'] as const);
    if (probe[needed] !== undefined && strange.every((key) => probe[key] === undefined)) return [];
    const message = `is measured in ${point.mode} and needs \`${needed}\`${needed === 'red' ? ' (and may have `black`)' : ''} alone`;
    return [problem('model-circuit', path, message, 'Volts, ohms and diode mode have leads at two nodes; amps are those of a supply.')];
  });
}

function functionsUsed(file: ModelFile, { functions }: Circuit): ModelProblem[] {
  const ids = file.functions.map(({ id }) => id);
  return Object.entries(functions).flatMap(([id, { needs }]) => [
    ...(ids.includes(id) ? [] : [unknown(`names the function "${id}", which is not in functions`, id, ids, ['circuit', 'functions', id])]),
    ...needs.flatMap((need, i) => {
      const path = ['circuit', 'functions', id, 'needs', i];
      if ('part' in need || 'rail' in need) return [];
      const { min = -Infinity, max = Infinity } = need;
      if (min === -Infinity && max === Infinity) return [problem('model-circuit', path, 'has no limit', 'Give it `min`, `max` or both.')];
      return min <= max ? [] : [problem('model-circuit', path, `has a min of ${min} above its max of ${max}`, 'Exchange the two.')];
    }),
  ]);
}

const unknown = (message: string, name: string, known: readonly string[], path: Path): ModelProblem =>
  problem('model-unknown-name', path, message, `Correct the name. ${knownHere(name, known)}`);
