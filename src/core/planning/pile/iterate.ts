import type { RandomStream } from '../../numeric/index.ts';
import { EPSILON, make, type Change } from './changes.ts';
import { copyOf, type Choice } from './choice.ts';
import { climb, openWell, shuffled } from './climb.ts';
import { likelyOption } from './promise.ts';
import { softenedWorth } from './model-worth.ts';
import type { Standing } from './standing.ts';

/**
 * Iterated search: shakes the best so far in one model, or drops a supplier, climbs again, and keeps what is better. `rounds` shakes;
 * the best score comes out, and the standing is left there.
 */
export function iterate(standing: Standing, rounds: number, random: RandomStream, shouldStop: () => boolean): number {
  const { problem } = standing;
  const all = problem.models.map((_, m) => m);
  let best = standing.score();
  for (let round = 0; round < rounds && !shouldStop(); round++) {
    const before = copyOf(standing.choice);
    const restore = standing.remember(all);
    const shaken = shake(standing, random, shouldStop);
    let score = climb(standing, shaken, random, shouldStop, 0);
    if (score > best - NEARLY * Math.abs(best)) score = climb(standing, shaken, random, shouldStop, SWAPS);
    if (score > best + EPSILON) {
      best = climb(standing, all, random, shouldStop, SWAPS);
      continue;
    }
    put(standing.choice, before);
    restore();
  }
  return best;
}

/** What comes this near to the best is worth a closer look. */
const NEARLY = 0.005;
/** So many swaps of units are looked at in each round of a climb. */
const SWAPS = 12;

function put(choice: Choice, from: Choice): void {
  choice.open.set(from.open);
  choice.option.set(from.option);
  choice.fill.set(from.fill);
}

/** The models that were shaken come out. */
function shake(standing: Standing, random: RandomStream, shouldStop: () => boolean): number[] {
  const kind = random();
  const { length } = standing.problem.units;
  if (length > MOST_REBUILT || kind > 0.75) return release(standing, random);
  if (kind < 0.06) return dropSupplier(standing, random);
  if (kind < 0.12) return shareOrders(standing, random, shouldStop);
  return kind < 0.4 ? rebuildModel(standing, random, shouldStop) : shakeModel(standing, random);
}

/** Beyond so many units only hours are moved between models. */
const MOST_REBUILT = 120;

/** Gives up one or two opened units of a model, so that the others may use their hours and money; they are asked first. */
function release(standing: Standing, random: RandomStream): number[] {
  const { problem, choice } = standing;
  const opened = problem.units.flatMap((_, u) => (choice.open[u] === 1 ? [u] : []));
  if (opened.length === 0) return shakeModel(standing, random);
  const first = opened[Math.floor(random() * opened.length)]!;
  const { model } = problem.units[first]!;
  const [second] = shuffled(
    opened.filter((u) => u !== first && problem.units[u]!.model === model),
    random,
  );
  make(standing, { set: 'open', at: first, to: 0 });
  if (second !== undefined && random() < 0.4) make(standing, { set: 'open', at: second, to: 0 });
  for (const { fills } of problem.models[model]!.pools)
    for (const f of fills) if (choice.fill[f]! > 0 && random() < 0.5) make(standing, { set: 'fill', at: f, to: choice.fill[f]! - 1 });
  const others = shuffled(
    problem.models.map((_, m) => m).filter((m) => m !== model),
    random,
  );
  return [...others, model];
}

/** Plans one model anew, from nothing, from everything or from what is, with softened chances at first. */
function rebuildModel(standing: Standing, random: RandomStream, shouldStop: () => boolean): number[] {
  const { problem, aim } = standing;
  const m = Math.floor(random() * problem.models.length);
  const from = random();
  if (from < 0.67) resetModel(standing, m, from < 0.33);
  standing.aimAt({ ...aim, worthOf: softenedWorth(0.1 + 0.5 * random()) });
  climb(standing, [m], random, shouldStop, 0);
  standing.aimAt(aim);
  return [m];
}

function resetModel(standing: Standing, m: number, open: boolean): void {
  const { problem } = standing;
  for (const u of problem.models[m]!.units) {
    make(standing, { set: 'open', at: u, to: open ? 1 : 0 });
    for (const t of problem.units[u]!.things) make(standing, { set: 'option', at: t, to: open ? likelyOption(problem, t) : 0 });
  }
  for (const { fills } of problem.models[m]!.pools) for (const f of fills) standing.setFill(f, 0);
}

/** Climbs as if orders cost no postage: what no model orders alone, several may together. */
function shareOrders(standing: Standing, random: RandomStream, shouldStop: () => boolean): number[] {
  const { problem, aim } = standing;
  const all = problem.models.map((_, m) => m);
  standing.aimAt({ ...aim, postage: false });
  climb(standing, all, random, shouldStop, 0);
  standing.aimAt(aim);
  return all;
}

/** Does without everything that one supplier brings. */
function dropSupplier(standing: Standing, random: RandomStream): number[] {
  const { problem, choice } = standing;
  const lines = standing.orders()?.lines ?? [];
  if (lines.length === 0) return shakeModel(standing, random);
  const { supplier } = lines[Math.floor(random() * lines.length)]!;
  const parts = new Set(lines.flatMap((line) => (line.supplier === supplier ? [line.part] : [])));
  problem.fills.forEach(({ part }, f) => {
    if (parts.has(part) && choice.fill[f]! > 0) standing.setFill(f, 0);
  });
  problem.things.forEach((thing, t) => {
    const { needs } = thing.options[choice.option[t]!]!;
    if (needs.some(([part, n]) => n > 0 && parts.has(part))) make(standing, { set: 'option', at: t, to: 0 });
  });
  return problem.models.map((_, m) => m);
}

/** Two to five changes at random in one model that has something to change. */
function shakeModel(standing: Standing, random: RandomStream): number[] {
  const { problem, choice } = standing;
  const m = Math.floor(random() * problem.models.length);
  const model = problem.models[m]!;
  const pick = <T>(list: readonly T[]): T | undefined => list[Math.floor(random() * list.length)];
  const count = 2 + Math.floor(random() * 4);
  for (let i = 0; i < count; i++) {
    const kind = random();
    if (kind < 0.35) {
      const u = pick(model.units);
      if (u === undefined) continue;
      if (choice.open[u] === 1) make(standing, { set: 'open', at: u, to: 0 });
      else openWell(standing, [], u, -Infinity);
      continue;
    }
    const pool = pick(model.pools)!;
    const change = kind < 0.6 ? fillChange(standing, pick(pool.fills), random) : optionChange(standing, pick(pool.things), random);
    if (change) make(standing, change);
  }
  return [m];
}

function fillChange({ choice }: Standing, f: number | undefined, random: RandomStream): Change | null {
  if (f === undefined) return null;
  const now = choice.fill[f]!;
  return { set: 'fill', at: f, to: now > 0 && random() < 0.5 ? now - 1 : now + 1 };
}

function optionChange({ problem }: Standing, t: number | undefined, random: RandomStream): Change | null {
  if (t === undefined) return null;
  const [option] = shuffled(
    problem.things[t]!.options.map((_, o) => o),
    random,
  );
  return { set: 'option', at: t, to: option! };
}
