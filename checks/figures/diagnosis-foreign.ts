import { Simulation } from 'eecircuit-engine';
import {
  applyFaults,
  asWritten,
  atSeverity,
  HANDHELD_METER,
  inPowerState,
  UNPOWERED,
  type CircuitFault,
  type Conditions,
  type Draw,
  type Netlist,
  type Part,
  type PowerState,
} from '../../src/core/circuit/index.ts';
import { boost, charger, FUNCTIONS, linreg, load } from '../circuit/board-laws-in-spice.ts';
import { POWER, type StudyBoard } from './diagnosis-board.ts';
import type { Trier } from './diagnosis-trials.ts';

/** What the other simulator's board differs in, beside its tolerances: junctions and transistors of other makers, chips that draw more, a warmer bench. */
const MISMATCH = { saturation: 1.4, gain: 0.75, load: 1.15, transconductance: 0.85, celsius: 34 } as const;

/** The other simulator keeps memory of every run, so it begins anew now and then. */
const RUNS = 60;

type Voltages = ReadonlyMap<string, number>;

function between(volts: Voltages | undefined, red: string, black: string): number | undefined {
  const at = (node: string): number | undefined => (node === '0' ? 0 : volts?.get(node.toLowerCase()));
  const [a, b] = [at(red), at(black)];
  return a === undefined || b === undefined ? undefined : a - b;
}

class Simulator {
  private runs = 0;
  private simulation: Simulation | undefined;

  /** Node voltages by lower-case name, or undefined where it finds none. */
  async voltages(netlist: string): Promise<Voltages | undefined> {
    if (!this.simulation || this.runs++ % RUNS === 0) {
      this.simulation = new Simulation();
      await this.simulation.start();
    }
    this.simulation.setNetList(netlist);
    const result = await this.simulation.runSim().catch(() => undefined);
    if (!result || result.dataType !== 'real') return undefined;
    return new Map(
      result.data.flatMap(({ name, type, values }): [string, number][] =>
        type === 'voltage' ? [[name.toLowerCase().replace(/^v\((.+)\)$/, '$1'), values[0] as number]] : [],
      ),
    );
  }
}

const simulator = new Simulator();

/** One board with faults in the other simulator, measured point by point. */
export class ForeignBoard {
  private readonly netlist: Netlist;
  private readonly conditions: Conditions;
  private readonly set: readonly CircuitFault[];

  constructor(
    private readonly board: StudyBoard,
    faults: readonly number[],
    draw: Draw,
  ) {
    this.set = faults.map((fault) => board.circuitFaults[fault]!);
    const base = asWritten(board.netlist);
    const drawn = { ...base, scale: Float64Array.from(base.scale, (scale, i) => scale * draw.scale[i]!) };
    const faulted = applyFaults(
      board.netlist,
      drawn,
      this.set.map(({ changes }) => ({ changes: atSeverity(changes, draw.severity) })),
    );
    [this.netlist, this.conditions] = [faulted.netlist, faulted.conditions];
  }

  /** False where a behavioural part has lost its ground: its laws are written against ground there. */
  get canBeWritten(): boolean {
    return this.netlist.parts.every(({ kind, nodes }) => {
      const ground = kind === 'LOAD' ? nodes[1] : kind === 'LINREG' || kind === 'BOOST' || kind === 'CHARGER' ? nodes[2] : '0';
      return ground === '0';
    });
  }

  /** What the meter shows, Infinity for OL; undefined where no operating point is found. */
  async reading(p: number): Promise<number | undefined> {
    const { mode } = this.board.points[p]!;
    const { red, black, held } = this.board.leads[p]!;
    const switches = held === undefined ? {} : { switches: { [held]: 'on' as const } };
    const across = async (meter: string, state: PowerState): Promise<number | undefined> =>
      between(await simulator.voltages(this.text(meter, { ...state, ...switches })), red, black);
    if (mode === 'volts') return across(`Rmeter ${red} ${black} ${HANDHELD_METER.volts.inputOhm}`, POWER);
    const { complianceV, ranges } = HANDHELD_METER[mode as 'ohms' | 'diode'];
    for (const { testA, upTo } of ranges) {
      // What keeps the meter within its compliance where nothing conducts: a clamp well above it.
      const volt = await across(
        `Imeter ${black} ${red} ${testA}\nBclamp ${red} ${black} I=max(0,V(${red},${black})-${complianceV + 0.5})*1m`,
        UNPOWERED,
      );
      if (volt === undefined) return undefined;
      const value = mode === 'diode' ? volt : volt / testA;
      if (volt <= complianceV && value <= upTo) return value;
    }
    return Infinity;
  }

  /** What works when it is tried. */
  async tries(trier: Trier): Promise<Map<string, boolean>> {
    const { needs } = trier;
    const byState = new Map<PowerState, Voltages | undefined>();
    for (const { state } of needs) if (!byState.has(state)) byState.set(state, await simulator.voltages(this.text('', state)));
    const volts = needs.map(({ state, net, against }) => between(byState.get(state), net, against) ?? NaN);
    return trier.noted(this.set, Float64Array.from(volts));
  }

  /** Its netlist for the other simulator, with the meter at it. */
  text(meter: string, state: PowerState): string {
    const fed = inPowerState(this.netlist, this.conditions, state);
    const lines = this.netlist.parts.flatMap((part, i) => {
      if (fed.removed[i]) return [];
      const bridge = fed.bridge[i]! > 0 ? [`Rbridge${i} ${part.nodes[0]} ${part.nodes[1]} ${1 / fed.bridge[i]!}`] : [];
      return [lineOf(part, i, fed.scale[i]!), ...bridge];
    });
    return [
      'a board of the study',
      FUNCTIONS,
      `.options temp=${MISMATCH.celsius} tnom=27 rshunt=1e11 reltol=1e-4 itl1=500`,
      ...lines,
      meter,
      '.op',
      '.end',
    ].join('\n');
  }
}

function lineOf({ kind, nodes, value, params: p, type }: Part, i: number, scale: number): string {
  const [a, b, c, d] = nodes as [string, string, string, string];
  const id = `p${i}`;
  switch (kind) {
    case 'R':
      return `R${id} ${a} ${b} ${value * scale}`;
    case 'C':
      return `C${id} ${a} ${b} ${value}`;
    case 'L':
      return `R${id} ${a} ${b} 0.05`;
    case 'V':
      return `V${id} ${a} ${b} ${value * scale}`;
    case 'BATTERY':
      return `V${id} i_${id} ${b} ${p['v']! * scale}\nR${id} i_${id} ${a} ${p['r']}`;
    case 'D':
      return `D${id} ${a} ${b} M${id}\n.model M${id} D(${modelText({ ...p, is: (p['is'] ?? 1e-14) * scale * MISMATCH.saturation }, ['is', 'n', 'rs', 'bv', 'ibv'])})`;
    case 'Q':
      return `Q${id} ${a} ${b} ${c} M${id}\n.model M${id} ${type}(${modelText({ ...p, is: (p['is'] ?? 1e-16) * scale * MISMATCH.saturation, bf: (p['bf'] ?? 100) * MISMATCH.gain }, ['is', 'bf', 'br', 'vaf', 'rb', 'rc'])})`;
    case 'M':
      return `M${id} ${a} ${b} ${c} ${d} M${id} w=${p['w']} l=${p['l']}\n.model M${id} ${type}(${modelText({ ...p, kp: p['kp']! * scale * MISMATCH.transconductance }, ['vto', 'kp', 'lambda'])})`;
    case 'LINREG':
      return linreg({ id, input: a, output: b, enable: d }, { vset: p['vset']! * scale, dropout: p['dropout']!, ilimit: p['ilimit']! });
    case 'BOOST':
      return boost(
        { id, input: a, output: b, enable: d },
        { vset: p['vset']! * scale, eff: p['eff']!, uvlo: p['uvlo']!, ilimit: p['ilimit']! },
      );
    case 'CHARGER':
      return charger({ id, input: a, output: b }, { icc: p['icc']!, vcv: p['vcv']! * scale });
    case 'LOAD':
      return load(id, a, p['i']! * scale * MISMATCH.load, p['von']!);
    default:
      throw new Error(`the study's board has no ${kind}`);
  }
}

const modelText = (params: Readonly<Record<string, number>>, names: readonly string[]): string =>
  names.flatMap((name) => (params[name] === undefined ? [] : [`${name}=${params[name]}`])).join(' ');
