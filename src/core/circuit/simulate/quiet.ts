import type { Circuit } from '../compile.ts';
import { thermalVoltage, type Conditions } from '../devices/bank.ts';
import { atSeverity } from '../faults/at-severity.ts';
import type { Change } from '../faults/fault.ts';
import { unknownOf } from '../meter/measure.ts';
import type { Part } from '../netlist/types.ts';
import type { Found } from './point-meter.ts';

/** A reading that changes by less than this share of itself is taken over from the healthy board: a tenth of what a meter can tell. */
const UNSEEN_SHARE = 1e-3;
/** No transistor, regulator or load of an unpowered board carries anything to speak of while its pins are this close together, V. */
const SLEEPS_BELOW_V = 0.03;

/** State of a healthy board while one point of it is measured. */
interface Measured extends Found {
  readonly x: Float64Array;
}

type Test = (measured: Measured) => boolean;

/**
 * Tells whether changes cannot be seen in a reading of an unpowered board, from the state of the healthy one alone. For a passive network, which is
 * reciprocal: a new conductance G between two nodes that are v apart changes the reading by less than v and, as a share, by less than v²·G over the
 * power of the meter; more resistance ΔR in a branch that carries i by less than i²·ΔR over that power; taking away what carries i by a share of less
 * than i over the test current (from the adjoint network of Director & Rohrer 1969). Anything else is never called quiet.
 * `standing` is how the healthy board is set while it is measured: a resistance counts as it stands, a held key as closed.
 */
export function quietTest(circuit: Circuit, standing: Conditions, changes: readonly Change[]): Test {
  const tests = atWorst(changes).flatMap((change) => testsOf(circuit, standing, change));
  return (measured) => {
    for (let i = 0; i < tests.length; i++) if (!tests[i]!(measured)) return false;
    return true;
  };
}

/** Standard deviations: what is quiet at this is quiet on all but one board in a thousand. */
const WORST = 3;

/** Changes at the most that they may show: leaks and shorts of least resistance, contacts of most. */
const atWorst = (changes: readonly Change[]): Change[] =>
  changes.flatMap((change) => atSeverity([change], change.does === 'scale' ? WORST : -WORST));

function testsOf(circuit: Circuit, standing: Conditions, change: Change): Test[] {
  const part = (name: string): Part => asItStands(circuit, standing, circuit.partIndex.get(name)!);
  switch (change.does) {
    case 'join':
      return [newPath(circuit, change.nodes, 1 / change.ohm)];
    case 'bridge':
      return [newPath(circuit, part(change.part).nodes, 1 / change.ohm)];
    case 'remove':
      return [lostPath(circuit, part(change.part))];
    case 'lift':
      return change.parts
        .map(part)
        .filter(({ nodes }) => nodes.includes(change.node))
        .map((one) => lostPath(circuit, one));
    case 'exchange':
      return [() => false];
    case 'swap':
      return [carriesLittle(circuit, part(change.part))];
    case 'scale': {
      const scaled = part(change.part);
      if (scaled.kind !== 'R') return [lostPath(circuit, scaled)];
      return [change.by < 1 ? newPath(circuit, scaled.nodes, (1 / change.by - 1) / scaled.value) : moreOhms(circuit, scaled, change.by)];
    }
  }
}

/** A resistor with the resistance that it has on the healthy board; one that is taken out conducts nothing. */
function asItStands({ netlist }: Circuit, { scale, removed }: Conditions, index: number): Part {
  const part = netlist.parts[index]!;
  if (part.kind !== 'R') return part;
  return { ...part, value: removed[index] ? Infinity : part.value * scale[index]! };
}

function newPath(circuit: Circuit, nodes: readonly string[], siemens: number): Test {
  const [a, b] = [unknownOf(circuit, nodes[0]!), unknownOf(circuit, nodes[1]!)];
  return ({ x, ampere, volt, value }) => {
    const v = Math.abs(x[a]! - x[b]!);
    return v <= UNSEEN_SHARE * Math.abs(volt) || (value !== Infinity && v * v * siemens <= UNSEEN_SHARE * ampere * Math.abs(volt));
  };
}

/** More resistance in series with a resistor that is there: i²·ΔR over the power of the meter. */
function moreOhms(circuit: Circuit, part: Part, by: number): Test {
  const [a, b] = [unknownOf(circuit, part.nodes[0]!), unknownOf(circuit, part.nodes[1]!)];
  const lost = lostPath(circuit, part);
  return (measured) => {
    const v = measured.x[a]! - measured.x[b]!;
    const power = ((v * v) / part.value) * (by - 1);
    return power <= UNSEEN_SHARE * measured.ampere * Math.abs(measured.volt) || lost(measured);
  };
}

/** Where a reading is OL, less conducts than before and it stays so. */
function lostPath(circuit: Circuit, part: Part): Test {
  const little = carriesLittle(circuit, part);
  return (measured) => measured.value === Infinity || little(measured);
}

function carriesLittle(circuit: Circuit, { kind, nodes, value, params }: Part): Test {
  const at = nodes.map((node) => unknownOf(circuit, node));
  const [a, b] = [at[0]!, at[1]!];
  switch (kind) {
    case 'C':
      return () => true;
    case 'R':
      return ({ x, ampere }) => Math.abs(x[a]! - x[b]!) <= UNSEEN_SHARE * ampere * value;
    case 'D': {
      const saturation = (params['is'] ?? 1e-14) * (params['area'] ?? 1);
      const nVt = (params['n'] ?? 1) * thermalVoltage(circuit.netlist.temperatureK);
      return ({ x, ampere }) => saturation * Math.expm1(Math.min(Math.abs(x[a]! - x[b]!) / nVt, 80)) <= UNSEEN_SHARE * ampere;
    }
    case 'Q':
    case 'M':
    case 'LINREG':
    case 'BOOST':
    case 'BUCK':
    case 'CHARGER':
    case 'LOAD':
      return ({ x }) => spreadOf(x, at) <= SLEEPS_BELOW_V;
    default:
      return () => false;
  }
}

function spreadOf(x: Float64Array, at: readonly number[]): number {
  let [least, most] = [Infinity, -Infinity];
  for (let i = 0; i < at.length; i++) {
    const v = x[at[i]!]!;
    if (v < least) least = v;
    if (v > most) most = v;
  }
  return most - least;
}
