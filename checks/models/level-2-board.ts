import { join } from 'node:path';
import {
  circuitInState,
  needHolds,
  type CircuitLook,
  type CircuitSpec,
  type Model,
  type ModelCircuit,
} from '../../src/bench/models/index.ts';
import {
  applyFaults,
  compileCircuit,
  inPowerState,
  measure,
  operatingPoint,
  refOf,
  type Circuit,
  type CircuitFault,
  type Conditions,
  type MeterRequest,
} from '../../src/core/circuit/index.ts';
import { loadModels } from '../../src/edges/models/load-models.ts';

export const LEVEL_2 = ['tern-tn20', 'corrie-cp4'];

/** A model at level 2 with a board of it on the bench: healthy, or with the faults that it was given. */
export class Level2Board {
  readonly spec: CircuitSpec;
  readonly circuit: ModelCircuit;
  private readonly kept = new Map<string, { circuit: Circuit; conditions: Conditions }>();

  constructor(
    readonly model: Model,
    private readonly faults: readonly CircuitFault[] = [],
  ) {
    if (!model.circuit || !model.file.circuit) throw new Error(`${model.file.id} has no circuit`);
    this.circuit = model.circuit;
    this.spec = model.file.circuit;
  }

  /** The operating point in a state, or an error that names where none was found. */
  solve(stateId: string): { circuit: Circuit; conditions: Conditions; x: Float64Array } {
    const { circuit, conditions } = this.standing(stateId);
    const fed = inPowerState(circuit.netlist, conditions, this.powerOf(stateId));
    const solution = operatingPoint(circuit, fed);
    if (!solution.ok) throw new Error(`${stateId}: ${solution.code} at ${solution.worst}`);
    return { circuit, conditions: fed, x: solution.x };
  }

  /** What the meter shows at a point of the model; null is OL. */
  reading(pointId: string): number | null {
    const point = this.model.file.points.find(({ id }) => id === pointId)!;
    const { red = '0', black = '0', supply = '', state = point.power } = this.spec.points[pointId]!;
    const power = this.powerOf(state);
    if (point.mode === 'amps') return this.measure(state, { mode: 'amps', supply, power });
    return this.measure(state, point.mode === 'volts' ? { mode: 'volts', red, black, power } : { mode: point.mode, red, black });
  }

  /** Whether a function of the model works, as far as its circuit tells. */
  works(functionId: string): boolean {
    const { state, needs } = this.spec.functions[functionId]!;
    return needs.every((need) => needHolds(need, state, this.spec, this.look));
  }

  private readonly look: CircuitLook = {
    volts: (red, black, state) => this.measure(state, { mode: 'volts', red, black, power: this.powerOf(state) }),
    ohms: (red, black, state) => this.measure(state, { mode: 'ohms', red, black }),
    amps: (supply, state) => this.measure(state, { mode: 'amps', supply, power: this.powerOf(state) }),
    partWell: (ref) => this.faults.every(({ components }) => !components.includes(refOf(ref))),
  };

  private measure(stateId: string, request: MeterRequest): number | null {
    const { circuit, conditions } = this.standing(stateId);
    const reading = measure(circuit, conditions, request);
    if (!reading.ok) throw new Error(`${stateId}: ${reading.code} at ${reading.worst}`);
    return reading.value;
  }

  private standing(stateId: string): { circuit: Circuit; conditions: Conditions } {
    const known = this.kept.get(stateId);
    if (known) return known;
    const { netlist, conditions } = applyFaults(
      this.circuit.netlist,
      circuitInState(this.circuit, this.stateOf(stateId)).conditions,
      this.faults,
    );
    const made = { circuit: compileCircuit(netlist), conditions };
    this.kept.set(stateId, made);
    return made;
  }

  private stateOf(id: string): CircuitSpec['states'][number] {
    return this.spec.states.find((state) => state.id === id)!;
  }

  private powerOf(id: string) {
    return circuitInState(this.circuit, this.stateOf(id)).power;
  }
}

/** The shipped models at level 2; their files must load without a problem. */
export async function level2Models(): Promise<Map<string, Model>> {
  const { models, problems } = await loadModels(join(import.meta.dirname, '../../models'));
  if (problems.length > 0) throw new Error(problems.map(({ file, line, message }) => `${file}:${line} ${message}`).join('\n'));
  return new Map(LEVEL_2.map((id) => [id, models.get(id)!]));
}
