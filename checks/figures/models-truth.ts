import { lookAt, looksOfFunction, keyOfLook, type Look } from '../../src/bench/boards/look.ts';
import { simulateLooks, type ReadyBoards } from '../../src/bench/boards/simulate-looks.ts';
import type { BoardFault, BoardPoint } from '../../src/bench/boards/board-knowledge.ts';
import { KINDS_OF_FAULT } from '../../src/bench/advice/board/fault-kinds.ts';
import { needHolds, type Model } from '../../src/bench/models/index.ts';
import { compileCircuit, drawBoards, type Circuit, type CircuitFault, type Draw } from '../../src/core/circuit/index.ts';
import type { Behaviour, Check, Evidence } from '../../src/core/diagnosis/index.ts';
import { randomStream, type RandomStream } from '../../src/core/numeric/index.ts';
import { NoAnswer, shownBy } from './diagnosis-sessions.ts';

/** A device with one hidden fault of its board, within its tolerances, as a person would find it: it answers every check. */
export class HiddenFault {
  private readonly ready: ReadyBoards;
  private readonly known = new Map<string, number>();
  private asked = 0;

  constructor(
    private readonly model: Model,
    circuit: Circuit,
    draw: Draw,
    readonly fault: BoardFault,
    private readonly random: RandomStream,
  ) {
    this.ready = { model, circuit, draws: [draw] };
  }

  /** What a check shows. Throws NoAnswer where the simulator finds no operating point. */
  answer(check: Check, point: BoardPoint | undefined): Evidence {
    const id = `${this.asked++} ${check.id}`;
    if (check.kind === 'try')
      return { id, kind: 'trial', function: check.function, outcome: this.tried(check.function, check.with), with: check.with };
    if (check.kind === 'look') return { id, kind: 'finding', block: check.block, sees: this.seen(check.block) };
    const value = this.read(lookAt(point!, this.model.circuit!));
    return { id, kind: 'reading', point: check.point, value: shownBy(point!.mode, value, this.random) };
  }

  /** Whether the fault stops some function: what stops none is not on the bench for it. Throws NoAnswer as `answer` does. */
  get shows(): boolean {
    return Object.keys(this.model.file.circuit!.functions).some((name) => !this.works(name));
  }

  private tried(name: string, accessories: readonly string[]): Behaviour {
    const { file } = this.model;
    const stoodIn = file.accessories.filter(({ id }) => accessories.includes(id)).map(({ block }) => block);
    if (stoodIn.includes(this.fault.block) || this.works(name)) return 'works';
    const { works, comes_and_goes } = KINDS_OF_FAULT[this.fault.circuit.kind].behaves;
    const luck = this.random();
    return luck < works ? 'works' : luck < works + comes_and_goes ? 'comes-and-goes' : 'fails';
  }

  private works(name: string): boolean {
    const spec = this.model.file.circuit!.functions[name];
    if (!spec) return true;
    this.simulate(looksOfFunction(spec));
    const read = (look: Look): number | null => {
      const value = this.read(look);
      return Number.isFinite(value) ? value : null;
    };
    const look = {
      volts: (red: string, black: string, state: string) => read({ mode: 'volts', state, red, black }),
      ohms: (red: string, black: string, state: string) => read({ mode: 'ohms', state, red, black }),
      amps: (supply: string, state: string) => read({ mode: 'amps', state, red: '0', black: '0', supply }),
      partWell: (ref: string) => !this.fault.circuit.components.includes(ref.toLowerCase()),
    };
    return spec.needs.every((need) => needHolds(need, spec.state, this.model.file.circuit!, look));
  }

  private seen(block: string): string {
    if (block !== this.fault.block) return 'nothing-wrong';
    let luck = this.random();
    for (const [sees, chance] of Object.entries(KINDS_OF_FAULT[this.fault.circuit.kind].seen)) {
      luck -= chance ?? 0;
      if (luck < 0) return sees;
    }
    return 'nothing-wrong';
  }

  private read(look: Look): number {
    if (!this.known.has(keyOfLook(look))) this.simulate([look]);
    const value = this.known.get(keyOfLook(look))!;
    if (Number.isNaN(value)) throw new NoAnswer();
    return value;
  }

  private simulate(looks: readonly Look[]): void {
    const values = simulateLooks(this.ready, [[this.fault.circuit satisfies CircuitFault]], looks);
    looks.forEach((look, i) => this.known.set(keyOfLook(look), values[i]!));
  }
}

/** Faults drawn by their rates, on boards within their tolerances; those that stop no function are passed over. */
export function hiddenFaults(
  model: Model,
  faults: readonly BoardFault[],
  rates: readonly number[],
  count: number,
  seed: string,
): HiddenFault[] {
  const random = randomStream(seed);
  const circuit = compileCircuit(model.circuit!.netlist);
  const all = rates.reduce((sum, rate) => sum + rate, 0);
  const drawn = (): BoardFault => {
    let left = random() * all;
    const found = rates.findIndex((rate) => (left -= rate) < 0);
    return faults[found < 0 ? faults.length - 1 : found]!;
  };
  return drawBoards(model.circuit!.netlist, count, randomStream(`tolerances of ${seed}`)).map((draw, i) => {
    for (;;) {
      const hidden = new HiddenFault(model, circuit, draw, drawn(), randomStream(`${seed} ${i}`));
      if (showsAtAll(hidden)) return hidden;
    }
  });
}

/** A device of which the simulator finds no operating point has no truth, and is passed over too. */
function showsAtAll(hidden: HiddenFault): boolean {
  try {
    return hidden.shows;
  } catch (error) {
    if (error instanceof NoAnswer) return false;
    throw error;
  }
}
