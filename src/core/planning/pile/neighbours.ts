import { inPool } from './choice.ts';
import { promiseOf } from './promise.ts';
import type { Change } from './changes.ts';
import type { Standing } from './standing.ts';

/** A change or a few together that may raise the score; units that are opened get their remedies looked for. */
export interface Neighbour {
  readonly changes: readonly Change[];
  /** The unit that is opened by it. */
  readonly opens?: number;
}

/**
 * Everything one step away in one model; of things that are alike one stands for all. At most so many swaps of an opened unit for
 * a promising one that is not are among them, as each of these needs its remedies looked for; with none, nothing is exchanged for anything else.
 */
export function neighboursOf(standing: Standing, m: number, swaps = Infinity): Neighbour[] {
  const { problem } = standing;
  const slots = problem.models[m]!.pools.flatMap((_, s) => slotNeighbours(standing, m, s, swaps > 0));
  return [...slots, ...unitNeighbours(standing, m, swaps)];
}

/** Another option for a thing, one fill more or less, and both against each other in the same slot. */
function slotNeighbours(standing: Standing, m: number, s: number, exchanges: boolean): Neighbour[] {
  const { problem, choice } = standing;
  const { fills } = problem.models[m]!.pools[s]!;
  const things = representatives(standing, m, s);
  const option = (at: number, to: number): Change => ({ set: 'option', at, to });
  const found: Neighbour[] = [];
  const give = (...changes: Change[]): void => void found.push({ changes });
  const more = fills.filter((f) => choice.fill[f]! < problem.models[m]!.units.length + 1);
  const fewer = fills.filter((f) => choice.fill[f]! > 0);
  const fill = (f: number, by: number): Change => ({ set: 'fill', at: f, to: choice.fill[f]! + by });
  for (const f of more) give(fill(f, 1));
  for (const f of fewer) {
    give(fill(f, -1));
    if (exchanges) for (const g of more) if (g !== f) give(fill(f, -1), fill(g, 1));
  }
  for (const t of things) {
    const now = choice.option[t]!;
    for (let o = 0; o < problem.things[t]!.options.length; o++) {
      if (o === now) continue;
      give(option(t, o));
      if (exchanges && now === 0) for (const f of fewer) give(option(t, o), fill(f, -1));
    }
    if (now === 0 || !exchanges) continue;
    for (const f of more) give(option(t, 0), fill(f, 1));
    for (const other of things) {
      if (other === t || choice.option[other]! !== 0) continue;
      for (let o = 1; o < problem.things[other]!.options.length; o++) give(option(t, 0), option(other, o));
    }
  }
  return found;
}

/** One thing of each kind and option in the pool of a slot; things of a pair that earns a premium stand for themselves. */
function representatives(standing: Standing, m: number, s: number): number[] {
  const { problem, choice } = standing;
  const model = problem.models[m]!;
  const seen = new Set<string>();
  return model.pools[s]!.things.filter((t) => {
    const thing = problem.things[t]!;
    if (thing.options.length < 2 || !inPool(problem, choice, t)) return false;
    const alone = model.moreMinor > 0 && model.original.includes(s) ? partnersOf(standing, thing.unit) : '';
    const key = `${thing.kind} ${choice.option[t]} ${alone}`;
    return !seen.has(key) && seen.add(key);
  });
}

const partnersOf = ({ problem, choice }: Standing, unit: number): string =>
  unit < 0 ? 'loose' : (problem.units[unit]!.pair ?? []).map((t) => problem.things[t]!.options[choice.option[t]!]!.chance).join();

/** A unit opened, closed, or one for another. */
function unitNeighbours({ problem, choice }: Standing, m: number, swaps: number): Neighbour[] {
  const promise = (u: number): number => promiseOf(problem, u);
  const seen = new Set<string>();
  const alike = (u: number): boolean => {
    const { signature, things } = problem.units[u]!;
    const key = choice.open[u] ? `${signature} ${things.map((t) => choice.option[t]).join()}` : signature;
    return !seen.has(key) && Boolean(seen.add(key));
  };
  const { units } = problem.models[m]!;
  const opened = units.filter((u) => choice.open[u] === 1 && alike(u));
  const closed = units.filter((u) => choice.open[u] !== 1 && alike(u)).sort((a, b) => promise(b) - promise(a));
  const close = (at: number): Change => ({ set: 'open', at, to: 0 });
  return [
    ...opened.map((u) => ({ changes: [close(u)] })),
    ...closed.map((u) => ({ changes: [], opens: u })),
    ...closed
      .slice(0, Math.ceil(swaps / Math.max(1, opened.length)))
      .flatMap((v) => opened.map((u) => ({ changes: [close(u)], opens: v })))
      .slice(0, swaps),
  ];
}
