import { powered, type Circuit, type CircuitFault, type Draw, type Netlist, type PowerState } from '../../src/core/circuit/index.ts';

type Faults = readonly CircuitFault[];

/** What a voltage has to be for something to work. */
interface Need {
  /** How the board is fed, and what is held meanwhile. */
  readonly state: PowerState;
  readonly net: string;
  /** The net that it is taken against. */
  readonly against: string;
  readonly from: number;
  readonly to: number;
  /** Limits in V, or as shares of what a healthy board has. */
  readonly unit: 'V' | 'healthy';
}

/** Something that a person tries on the device before a probe is taken up: it works when all its needs hold and none of its parts is at fault. */
interface DeviceTrial {
  readonly id: string;
  readonly needs: readonly Need[];
  /** Parts that no steady voltage tells of, as the faults name them. */
  readonly parts: readonly string[];
}

const ON: PowerState = { supplies: { XBT1: 3.9 } };
const CHARGER_IN: PowerState = { supplies: { XBT1: 3.9, VCHG: 5 } };
/** A logic input takes less for low; share 0.3 of a supply of 3.3 V, common practice, no source. */
const LOW_V = 1;

const rail = (net: string, volt: number): Need => ({ state: ON, net, against: '0', from: 0.95 * volt, to: 1.05 * volt, unit: 'V' });
const like = (net: string, from: number, to: number, { against = '0', state = ON } = {}): Need => ({
  state,
  net,
  against,
  from,
  to,
  unit: 'healthy',
});

/** What can be tried on the board of the study: that it starts, charges and sounds, each key, each lamp, each thing that it switches, the contacts together. */
function deviceTrials({ parts, nodes }: Netlist): DeviceTrial[] {
  const nets = new Set(nodes);
  /** Ids of the blocks that have this net. */
  const blocks = (net: string): string[] => [...nets].flatMap((each) => (new RegExp(`^${net}(\\d+)$`).exec(each) ?? []).slice(1));
  const held = (id: string): PowerState => ({
    ...ON,
    switches: { [parts.find(({ name }) => name.toLowerCase() === `rsw${id}01`)!.name]: 'on' },
  });
  const of = (id: string, needs: readonly Need[], own: readonly string[] = []): DeviceTrial => ({ id, needs, parts: own });
  return [
    of('starts', [rail('v33', 3.3), rail('v18', 1.8), like('rst', 0.7, 1.3)]),
    of('charges', [like('batp', 0.3, 3, { against: 'cellp', state: CHARGER_IN })]),
    of('charge lamp', [like('chg_stat', 0.4, 2, { state: CHARGER_IN })]),
    of('sounds', [rail('v5', 5), like('snd_b', 0.85, 1.15), like('vol', 0.5, 1.5)], ['ls1', 'c8']),
    ...blocks('kc').map((id) =>
      of(`key ${id}`, [like(`ki${id}`, 0.7, 1.3), { state: held(id), net: `ki${id}`, against: '0', from: -0.3, to: LOW_V, unit: 'V' }]),
    ),
    ...blocks('la').map((id) => of(`lamp ${id}`, [like(`la${id}`, 0.5, 1.5, { against: `lk${id}` })])),
    ...blocks('sw').map((id) => of(`switched ${id}`, [like(`sw${id}`, 0.85, 1.15)])),
    of(
      'contacts',
      blocks('p').map((id) => like(`p${id}`, 0.85, 1.15)),
    ),
  ];
}

/** Voltages of all needs, in order: set by set, draw by draw. */
function voltages(circuit: Circuit, needs: readonly Need[], sets: readonly Faults[], draws: readonly Draw[]): Float64Array {
  const values = new Float64Array(sets.length * draws.length * needs.length);
  for (const state of new Set(needs.map((need) => need.state))) {
    const columns = [...needs.keys()].filter((n) => needs[n]!.state === state);
    const points = columns.map((n) => ({ red: needs[n]!.net, black: needs[n]!.against }));
    const found = powered(circuit, sets, draws, { state, points }).values;
    for (let row = 0; row < sets.length * draws.length; row++)
      columns.forEach((n, i) => (values[row * needs.length + n] = found[row * columns.length + i]!));
  }
  return values;
}

/** Who tries a board of the study: what works is judged against healthy boards of the dictionary. */
export class Trier {
  readonly needs: readonly Need[];
  private readonly trials: readonly DeviceTrial[];
  private readonly healthy: readonly number[];

  constructor(
    netlist: Netlist,
    private readonly circuit: Circuit,
    draws: readonly Draw[],
  ) {
    this.trials = deviceTrials(netlist);
    this.needs = this.trials.flatMap(({ needs }) => needs);
    const values = voltages(circuit, this.needs, [[]], draws);
    this.healthy = this.needs.map((_, n) => draws.reduce((sum, _draw, d) => sum + values[d * this.needs.length + n]! / draws.length, 0));
  }

  /** By trial, whether it works: set by set and draw by draw, 1 or 0; NaN where no operating point was found. */
  works(sets: readonly Faults[], draws: readonly Draw[]): Map<string, Float32Array> {
    const values = voltages(this.circuit, this.needs, sets, draws);
    const width = this.needs.length;
    const rows = sets.flatMap((set, s) =>
      draws.map((_, d) => this.judge(set, values.subarray((s * draws.length + d) * width, (s * draws.length + d + 1) * width))),
    );
    return new Map(this.trials.map(({ id }, t) => [id, Float32Array.from(rows, (row) => row[t]!)]));
  }

  /** What a person notes of one board; where no operating point was found nothing is noted. */
  noted(set: Faults, volts: Float64Array): Map<string, boolean> {
    const outcomes = this.judge(set, volts);
    return new Map(this.trials.flatMap(({ id }, t) => (Number.isNaN(outcomes[t]) ? [] : [[id, outcomes[t] === 1] as const])));
  }

  /** The same for a board of the study's own circuit. */
  try(set: Faults, draw: Draw): Map<string, boolean> {
    return this.noted(set, voltages(this.circuit, this.needs, [set], [draw]));
  }

  /** By trial: 1, 0 or NaN; voltages are those of the needs, in order. */
  private judge(set: Faults, volts: Float64Array): number[] {
    return this.trials.map(({ needs, parts }) => {
      if (set.some(({ components }) => components.some((each) => parts.includes(each)))) return 0;
      const held = needs.map((need) => this.holds(need, volts));
      return held.includes(0) ? 0 : held.some(Number.isNaN) ? NaN : 1;
    });
  }

  private holds(need: Need, volts: Float64Array): number {
    const n = this.needs.indexOf(need);
    const value = need.unit === 'V' ? volts[n]! : volts[n]! / this.healthy[n]!;
    return Number.isNaN(value) ? NaN : Number(value >= need.from && value <= need.to);
  }
}
