import { shortWalk } from '../../../core/numeric/index.ts';
import type { MeterMode } from '../../../bench/events/index.ts';
import type { Caution, ModelFile } from '../../../bench/models/schema.ts';
import type { Place } from '../board/frame.ts';
import type { EditorPart, Side } from './editor-part.ts';

/** A point of the model as it is measured on a known-good board. */
export interface WalkStop {
  readonly id: string;
  readonly name: string;
  readonly mode: MeterMode;
  readonly power: 'off' | 'battery' | 'charger';
  readonly cautions: readonly Caution[];
  readonly side: Side;
  /** Where the probe goes, mm; null where nobody has said. */
  readonly at: Place | null;
}

/** How board and meter stand: as at the last point that was measured. */
export type WalkStance = Pick<WalkStop, 'mode' | 'power' | 'side' | 'at'>;

/** Seconds that a change takes, and the way of the probe (common practice, no source). */
export const WALK_SECONDS = { power: 60, side: 15, mode: 4, perMm: 0.03, search: 8 } as const;

/** The board as it is laid down: unpowered, front up, nothing set on the meter. */
export const AT_FIRST: WalkStance = { mode: 'diode', power: 'off', side: 'front', at: null };

/** What it takes to get from one point to another, seconds. */
export function secondsBetween(from: WalkStance, to: WalkStance): number {
  const { power, side, mode, perMm, search } = WALK_SECONDS;
  const changes = (from.power === to.power ? 0 : power) + (from.side === to.side ? 0 : side) + (from.mode === to.mode ? 0 : mode);
  const way = from.at && to.at ? perMm * Math.hypot(from.at.x - to.at.x, from.at.y - to.at.y) : search;
  return changes + way;
}

/** The points in an order of little effort: the fewest changes of power, then of side and mode, then the shortest way of the probe. */
export function walkOrder(stops: readonly WalkStop[], from: WalkStance = AT_FIRST): WalkStop[] {
  const at = (stop: number): WalkStance => (stop < 0 ? from : stops[stop]!);
  return shortWalk(stops.length, (a, b) => secondsBetween(at(a), at(b))).map((stop) => stops[stop]!);
}

/** What has to be changed before a point can be measured, as sentences; the power first. */
export function changesTo(from: WalkStance, to: WalkStop): string[] {
  return [
    from.power === to.power ? [] : [POWER_CHANGE[to.power]],
    from.side === to.side ? [] : [`Turn the board over: the ${to.side} is up.`],
    from.mode === to.mode ? [] : [`Set the meter to ${MODE_CHANGE[to.mode]}.`],
  ].flat();
}

const POWER_CHANGE = {
  off: 'Power off, battery and charger out; wait until the capacitors are empty.',
  battery: 'Power it from its battery, or from a bench supply set to its voltage with a current limit.',
  charger: 'Power it from its charger.',
} as const;
const MODE_CHANGE: Readonly<Record<MeterMode, string>> = {
  volts: 'volts',
  ohms: 'ohms',
  diode: 'diode mode',
  amps: 'amperes, leads in their own sockets',
};

/** What can hurt at a point: the cell that feeds it, the charger, and what touching does to an open board. */
export function cautionsAt(
  { cell }: Pick<ModelFile, 'cell'>,
  { power, stage }: Pick<ModelFile['points'][number], 'power' | 'stage'>,
): Caution[] {
  return [
    power !== 'off' && cell?.chemistry === 'li-ion' ? ['lithium-cell' as const] : [],
    power === 'charger' ? ['mains' as const] : [],
    stage === 'closed' ? [] : ['esd' as const],
  ].flat();
}

/** Points of the model with their places: where a test point with their name is marked, else where the model has them. */
export function stopsOf({ points, cell }: Pick<ModelFile, 'points' | 'cell'>, parts: Iterable<EditorPart>): WalkStop[] {
  const marked = new Map([...parts].flatMap((part) => (part.kind === 'test-point' ? [[pointIdOf(part), part] as const] : [])));
  return points.map(({ id, name, mode, power, stage, side, at }) => {
    const mark = marked.get(id);
    const place = mark ? { x: mark.x, y: mark.y } : at ? { x: at[0], y: at[1] } : null;
    return { id, name, mode, power, cautions: cautionsAt({ cell }, { power, stage }), side: mark?.side ?? side, at: place };
  });
}

/** The point of the model that a marked test point is: its value, or its reference where it has none. */
export const pointIdOf = ({ ref, value }: Pick<EditorPart, 'ref' | 'value'>): string => (value === '' ? ref : value);

/** The name that the next known-good board gets: good-1, good-2 … */
export function nextBoard(readings: readonly { readonly board: string }[]): string {
  const numbers = readings.map(({ board }) => Number(/^good-(\d+)$/.exec(board)?.[1] ?? 0));
  return `good-${Math.max(0, ...numbers) + 1}`;
}
