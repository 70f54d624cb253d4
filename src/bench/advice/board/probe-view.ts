import type { BenchState } from '../../../core/diagnosis/readings/index.ts';
import type { BoardPoint } from '../../boards/board-knowledge.ts';
import type { Model } from '../../models/index.ts';
import type { ProbeView } from '../../views/index.ts';
import { lower } from '../say.ts';
import type { BoardModel } from './board-model.ts';
import { leadOn, placeOf } from './pads-of-net.ts';

const MODE_WORDS = { volts: 'DC volts', ohms: 'ohms', diode: 'diode mode', amps: 'DC amps' } as const;

/** Where the leads go for a point of the circuit, and what to set first on a bench that stands so; null for a point that the circuit does not tell of. */
export function probeView(known: BoardModel, pointId: string, bench: BenchState): ProbeView | null {
  const point = known.points.get(pointId);
  const { model } = known;
  if (!point || !model.circuit) return null;
  const side = point.side === 'both' ? bench.side : point.side;
  const at = model.file.points.find(({ id }) => id === pointId)?.at;
  const red = point.supply === undefined ? leadOn(model.circuit, point.red, at ? { x: at[0], y: at[1], side } : null, side) : null;
  const black = red && leadOn(model.circuit, point.black, placeOf(red), side);
  return {
    point: point.id,
    red,
    black,
    supply: point.supply ?? null,
    power: { id: point.power, name: powerName(model, point.power) },
    set: toSet(model, point, bench, side),
  };
}

export const powerName = ({ file }: Model, power: string): string => file.circuit?.states.find(({ id }) => id === power)?.name ?? power;

function toSet(model: Model, point: BoardPoint, bench: BenchState, side: 'front' | 'back'): string[] {
  return [
    ...(side === bench.side ? [] : [`Turn the board: ${side} up.`]),
    ...(point.power === bench.power ? [] : [`Set the power: ${lower(powerName(model, point.power))}.`]),
    ...(point.mode === bench.mode ? [] : [`Set the meter to ${MODE_WORDS[point.mode]}.`]),
  ];
}

/** "Red on C25 pin 1 (V33), black on ground; on its cell, switched on." */
export function probeWords({ red, black, supply, power }: ProbeView): string {
  const pad = (lead: NonNullable<ProbeView['red']>): string => {
    const [first] = lead.pads;
    return first ? `${first.ref} pin ${first.pin} (${lead.name})` : lead.name;
  };
  const where = red && black ? `Red on ${pad(red)}, black on ${pad(black)}` : `The current of ${supply ?? 'the supply'}`;
  return `${where}; ${lower(power.name)}.`;
}
