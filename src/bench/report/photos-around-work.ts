import { isForeign, type Stored } from '../events/index.ts';
import type { Item } from '../state.ts';
import type { PhotosAroundWork, ReportPhoto } from './report-view.ts';

const WORK: ReadonlySet<string> = new Set(['remedy-done', 'transplant-done']);

/** The photos of an item in the order of its log, parted by its work; what was taken back does not count. */
export function photosAroundWork(item: Item, log: readonly Stored[], corrected: ReadonlyMap<string, string>): PhotosAroundWork {
  const counts = log.filter(({ event }) => !isForeign(event) && !corrected.has(event.id));
  const works = counts.flatMap(({ event }, i) => (WORK.has(event.kind) ? [i] : []));
  const [first, last] = [works[0] ?? Infinity, works.at(-1) ?? Infinity];
  const known = new Map(item.photos.map((photo) => [photo.eventId, photo]));
  const placed = counts.flatMap(({ event }, i): { i: number; photo: ReportPhoto }[] => {
    const photo = known.get(event.id);
    return photo ? [{ i, photo: { hash: photo.hash, side: photo.side, caption: photo.caption, day: event.at.slice(0, 10) } }] : [];
  });
  const where = (holds: (i: number) => boolean): ReportPhoto[] => placed.filter(({ i }) => holds(i)).map(({ photo }) => photo);
  return { before: where((i) => i < first), during: where((i) => i > first && i < last), after: where((i) => i > last) };
}

/** The last photo before the work and the first after it that show the same side, the front first; null where there are none. */
export function beforeAndAfter({ before, after }: PhotosAroundWork): { readonly before: ReportPhoto; readonly after: ReportPhoto } | null {
  const sides = ['front', 'back', 'board-front', 'board-back', 'inside', 'other'];
  for (const side of sides) {
    const pair = { before: before.findLast((photo) => photo.side === side), after: after.findLast((photo) => photo.side === side) };
    if (pair.before && pair.after) return { before: pair.before, after: pair.after };
  }
  return null;
}
