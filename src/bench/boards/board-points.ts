import { padsOf, type BoardPart, type Model, type ModelCircuit } from '../models/index.ts';
import type { BoardPoint } from './board-knowledge.ts';
import { keyOfLook, lookAt } from './look.ts';
import { netWords, rolesOf } from './part-remedies.ts';

/** To put two leads on pads and read, minutes. Common practice, no source. */
const MINUTES = { volts: 0.5, ohms: 0.4, diode: 0.4 } as const;
const HELD_MINUTES = 0.7;
const OFF = 'off';

/**
 * Where a board of a model can be measured: the points of its file, then each net that has a pad, against ground, in volts in the state of most functions and in ohms
 * and diode mode without power, then each contact and each held key across its two sides. What a point of the file measures already is not there twice.
 */
export function boardPoints(model: Model): readonly BoardPoint[] {
  const before = made.get(model);
  if (before) return before;
  const points = makePoints(model);
  made.set(model, points);
  return points;
}

const made = new WeakMap<Model, readonly BoardPoint[]>();

function makePoints(model: Model): BoardPoint[] {
  const { circuit } = model;
  if (!circuit || !model.file.circuit) return [];
  const all = [...namedPoints(model), ...netPoints(model, circuit), ...acrossPoints(model, circuit)];
  const [seen, ids] = [new Set<string>(), new Set<string>()];
  return all.filter((point) => {
    const look = keyOfLook(lookAt(point, circuit));
    const isNew = (point.named || !seen.has(look)) && !ids.has(point.id) && point.id.length <= 64;
    seen.add(look);
    ids.add(point.id);
    return isNew;
  });
}

function namedPoints({ file }: Model): BoardPoint[] {
  return file.points.flatMap((point): BoardPoint[] => {
    const probe = file.circuit!.points[point.id];
    if (!probe || (probe.red === undefined && probe.supply === undefined)) return [];
    const { id, name, mode, side, stage } = point;
    const leads = { red: probe.red ?? '0', black: probe.black ?? '0', ...(probe.supply === undefined ? {} : { supply: probe.supply }) };
    return [{ id, name, mode, side, stage, minutes: 0.5, power: probe.state ?? point.power, ...leads, named: true }];
  });
}

/** The state in which most functions must hold: that of a unit that runs. */
function runningState({ file }: Model): string | null {
  const counts = new Map<string, number>();
  for (const { state } of Object.values(file.circuit!.functions)) counts.set(state, (counts.get(state) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? null;
}

function netPoints(model: Model, circuit: ModelCircuit): BoardPoint[] {
  const running = runningState(model);
  return [...sidesOfNets(circuit)].flatMap(([net, side]) => {
    const at = { side, stage: 'board-out' as const, red: net, black: '0', named: false };
    const words = netWords(net);
    const volts = { ...at, id: `${written(net)}.volts`, name: words, mode: 'volts' as const, minutes: MINUTES.volts };
    const rest = (['ohms', 'diode'] as const).map((mode) => ({
      ...at,
      id: `${written(net)}.${mode}`,
      name: `${words} to ground`,
      mode,
      minutes: MINUTES[mode],
      power: OFF,
    }));
    return [...(running === null ? [] : [{ ...volts, power: running }]), ...rest];
  });
}

/** Nets with a pad on the board, ground left out, and the side where they can be reached. */
function sidesOfNets({ parts }: ModelCircuit): Map<string, BoardPoint['side']> {
  const sides = new Map<string, BoardPoint['side']>();
  for (const part of parts) {
    if (part.side === 'off') continue;
    for (const { net, side } of padsOf({ ...part, side: part.side })) {
      if (net === null || net === '0') continue;
      const before = sides.get(net);
      sides.set(net, before === undefined || before === side ? side : 'both');
    }
  }
  return sides;
}

/** Across each contact as it stands, and across each key while it is held. */
function acrossPoints(model: Model, { parts, netlist }: ModelCircuit): BoardPoint[] {
  const roles = rolesOf(model);
  const nodes = new Map(netlist.parts.map((part) => [part.name.toLowerCase(), part.nodes]));
  return parts.flatMap((part) => {
    const role = roles.get(part.ref.toLowerCase());
    if (part.side === 'off' || (role !== 'contact' && role !== 'key')) return [];
    return part.elements.flatMap((element) => {
      const [red, black] = nodes.get(element.toLowerCase()) ?? [];
      return red === undefined || black === undefined ? [] : [acrossPoint(part, element, role === 'key', red, black)];
    });
  });
}

function acrossPoint(part: BoardPart, element: string, isKey: boolean, red: string, black: string): BoardPoint {
  const side = part.side === 'off' ? 'front' : part.side;
  const common = { mode: 'ohms' as const, side, stage: 'board-out' as const, power: OFF, red, black, named: false };
  if (isKey)
    return { ...common, id: `across.${written(part.ref)}.held`, name: `${part.ref} held down`, minutes: HELD_MINUTES, held: part.ref };
  return { ...common, id: `across.${written(element)}`, name: `Contact ${element.toUpperCase()}`, minutes: MINUTES.ohms };
}

/** In the letters of a name: what they lack is written as a dot and two digits of its code. */
const written = (name: string): string =>
  name.replace(/[^A-Za-z0-9_]/g, (letter) => `.${letter.charCodeAt(0).toString(16).padStart(2, '0')}`).replace(/^[^A-Za-z0-9]/, 'n$&');
