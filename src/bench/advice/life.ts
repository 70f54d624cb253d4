import type { HistoryEntry, Item } from '../state.ts';

/**
 * The history of a unit together with what was recorded on assemblies while they sat in it, in order of time. What
 * was recorded elsewhere is left out: it comes in with the transplant.
 */
export function lifeOf(unit: Item, items: ReadonlyMap<string, Item>): readonly HistoryEntry[] {
  const life = [...unit.history];
  for (const entry of unit.history) {
    if (entry.kind !== 'slot' || entry.came === null) continue;
    for (const guest of whileInside(items.get(entry.came), entry.eventId)) insert(life, guest, life.indexOf(entry) + 1);
  }
  return life;
}

function whileInside(assembly: Item | undefined, since: string): HistoryEntry[] {
  const history = assembly?.history ?? [];
  const start = history.findIndex((entry) => entry.kind === 'moved' && entry.eventId === since);
  if (start < 0) return [];
  const rest = history.slice(start + 1);
  const end = rest.findIndex((entry) => entry.kind === 'moved');
  return end < 0 ? rest : rest.slice(0, end);
}

function insert(life: HistoryEntry[], guest: HistoryEntry, from: number): void {
  let place = from;
  while (place < life.length && life[place]!.at <= guest.at) place++;
  life.splice(place, 0, guest);
}
