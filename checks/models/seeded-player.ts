import { boardTask, type BoardFault } from '../../src/bench/boards/index.ts';
import { circuitInState, needHolds, type CircuitLook, type Model } from '../../src/bench/models/index.ts';
import { applyFaults, compileCircuit, measure, type MeterRequest } from '../../src/core/circuit/index.ts';

/** What a fault of the circuit of the Corrie CP-4 is called in a model that knows it only as a pocket player. */
const BLOCKS: Readonly<Record<string, string>> = {
  'battery-contacts': 'battery-contacts',
  switch: 'switch',
  'motor-drive': 'converter',
  preamp: 'sound',
  amplifier: 'sound',
};
const FUNCTIONS: Readonly<Record<string, string>> = {
  starts: 'turns',
  'runs-on-battery': 'turns',
  'runs-on-charger': 'runs-on-inlet',
  sound: 'plays',
  'reads-slot': 'turns',
  keys: 'turns',
};

/** A Corrie CP-4 with one fault of its circuit, as it behaves on a bench that has a model of its own for it: the circuit answers, the bench does not see it. */
export class SeededPlayer {
  constructor(
    readonly model: Model,
    readonly fault: BoardFault,
  ) {}

  /** Faults of the circuit that one of its functions tells, in blocks that the other model has too. */
  static candidates(model: Model): BoardFault[] {
    return boardTask(model, []).faults.filter((fault) => {
      const player = new SeededPlayer(model, fault);
      return BLOCKS[fault.block] !== undefined && Object.keys(FUNCTIONS).some((name) => !player.works(name));
    });
  }

  /** The block that is at fault, as the other model calls it. */
  get block(): string {
    return BLOCKS[this.fault.block]!;
  }

  /** Functions that the circuit says nothing of are well. */
  works(name: string): boolean {
    const { circuit } = this.model.file;
    const { state, needs } = circuit!.functions[FUNCTIONS[name] ?? ''] ?? { state: 'off', needs: [] };
    return needs.every((need) => needHolds(need, state, circuit!, this.look));
  }

  /** Volts at a point of the CP-4 on its cells, rounded as a meter shows them. */
  volts(point: string): number {
    const { red, black } = this.model.file.circuit!.points[point]!;
    return Number((this.look.volts(red!, black ?? '0', 'battery') ?? 0).toFixed(3));
  }

  private readonly look: CircuitLook = {
    volts: (red, black, state) => this.ask(state, (power) => ({ mode: 'volts', red, black, power })),
    ohms: (red, black, state) => this.ask(state, () => ({ mode: 'ohms', red, black })),
    amps: (supply, state) => this.ask(state, (power) => ({ mode: 'amps', supply, power }) as MeterRequest),
    partWell: (ref) => !this.fault.refs.includes(ref),
  };

  private ask(stateId: string, request: (power: ReturnType<typeof circuitInState>['power']) => MeterRequest): number | null {
    const { circuit, file } = this.model;
    const { conditions, power } = circuitInState(
      circuit!,
      file.circuit!.states.find(({ id }) => id === stateId)!,
    );
    const faulted = applyFaults(circuit!.netlist, conditions, [this.fault.circuit]);
    const reading = measure(compileCircuit(faulted.netlist), faulted.conditions, request(power));
    return reading.ok ? reading.value : null;
  }
}
