import { isSupply, type Netlist, type Part } from '../../core/circuit/index.ts';
import { readNetName } from '../../core/netting/index.ts';
import type { CircuitSpec, ModelFile } from '../models/index.ts';

type State = CircuitSpec['states'][number];

/** A rail may be off by so much of its nominal voltage before a function that needs it stops. Common practice, no source. */
const WITHIN = 0.08;

/**
 * What can be said of a device by the names in its netlist alone: nets called as voltages are its rails; it is measured with nothing in, on its battery, and
 * with its charger in where it has one (a battery and a voltage source are known by their kind); a point is at the net that its name begins with; and a function that
 * needs the battery needs all rails.
 */
export function defaultSpec(file: Pick<ModelFile, 'points' | 'functions' | 'cell'>, netlist: Netlist): CircuitSpec {
  const rails = railsOf(file, netlist.nodes);
  const supplies = netlist.parts.filter(isSupply);
  const states = statesOf(supplies);
  const running = states.find(({ id }) => id === 'battery') ? 'battery' : 'charger';
  const needs = Object.keys(rails).map((rail) => ({ rail, within: WITHIN }));
  const hasRails = needs.length > 0 && supplies.length > 0;
  const feeding = file.functions.filter((fn) => fn.needs.some((need) => need === 'battery' || need === 'power-supply'));
  return {
    netlist: 'board.cir',
    placement: 'placement.csv',
    rails,
    states,
    points: pointsOf(file, netlist, states),
    functions: hasRails ? Object.fromEntries(feeding.map(({ id }) => [id, { state: running, needs }])) : {},
  };
}

/** Nominal voltages by the names of nets; that of the battery is its cell's. */
function railsOf({ cell }: Pick<ModelFile, 'cell'>, nodes: readonly string[]): Record<string, number> {
  return Object.fromEntries(
    nodes.flatMap((node) => {
      const name = readNetName(node);
      const volt = name?.volt ?? (node === 'vbat' ? (cell?.volts ?? null) : null);
      return name?.kind === 'supply' && volt !== null && volt > 0 ? [[node, volt]] : [];
    }),
  );
}

const voltOf = ({ kind, value, params }: Part): number => (kind === 'BATTERY' ? params['v']! : value);

function statesOf(supplies: readonly Part[]): State[] {
  const batteries = supplies.filter(({ kind }) => kind === 'BATTERY');
  const chargers = supplies.filter(({ kind }) => kind === 'V');
  const given = (parts: readonly Part[]): State['supplies'] => Object.fromEntries(parts.map((part) => [part.name, voltOf(part)]));
  return [
    { id: 'off', name: 'Nothing connected', supplies: {}, set: {} },
    ...(batteries.length > 0 ? [{ id: 'battery', name: 'On its battery', supplies: given(batteries), set: {} }] : []),
    ...(chargers.length > 0 ? [{ id: 'charger', name: 'Charger in', supplies: given([...chargers, ...batteries]), set: {} }] : []),
  ];
}

/** `V33-R` is at the net v33; a point in a state that is not there, or at a net that is not drawn, is left out. */
function pointsOf({ points }: Pick<ModelFile, 'points'>, { nodes }: Netlist, states: readonly State[]): CircuitSpec['points'] {
  const known = new Set(nodes);
  return Object.fromEntries(
    points.flatMap(({ id, mode, power }) => {
      const whole = id.toLowerCase();
      const red = known.has(whole) ? whole : whole.split(/[.-]/, 1)[0]!;
      if (mode === 'amps' || !known.has(red) || !states.some((state) => state.id === power)) return [];
      return [[id, { red }]];
    }),
  );
}
