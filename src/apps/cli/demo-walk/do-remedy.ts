import type { ItemFile, RemedyView } from '../../../bench/views/index.ts';
import { openTo } from './open-to.ts';
import { modelOf, note, pounds, type Workplace } from './workplace.ts';

/** Cheap parts come in bags of so many, dear ones by the piece (an assumption of the walk). */
const BAG = { count: 5, belowMinor: 100 };
const DELIVERY_MINUTES = 2 * 24 * 60;

/** Does the work that the advice names, with parts from the drawer or ordered for it; whether it helped is left to the next trial. */
export function doRemedy(place: Workplace, file: ItemFile, remedy: RemedyView): void {
  const spec = modelOf(place, file).file.remedies.find((each) => each.id === remedy.id)!;
  for (const part of remedy.parts) useParts(place, file, part);
  openTo(place, file, spec.stage);
  note(place, 'remedy-done', { item_id: file.row.id, remedy: remedy.id, minutes: spec.minutes, outcome: 'not-tried-yet' });
  place.clock.pass(spec.minutes);
  place.truth.mend(file.row.id, remedy.id);
  place.say(`    Done in ${spec.minutes} min; the next trial says whether it helped.`);
}

function useParts(place: Workplace, file: ItemFile, { part, name, count }: RemedyView['parts'][number]): void {
  const { bench } = place;
  const holding = () => bench.drawer().bags.find((bag) => bag.part === part && bag.count >= count);
  if (!holding()) order(place, file, { part, name, count });
  const bag = holding()!;
  note(place, 'part-used', { bag_id: bag.id, item_id: file.row.id, count });
  place.say(`    Used ${count} × ${name} from the drawer (${bag.count - count} left).`);
}

function order(place: Workplace, file: ItemFile, { part, name, count: needed }: { part: string; name: string; count: number }): void {
  const { clock, bench } = place;
  const each = modelOf(place, file).file.parts.find((known) => known.id === part)?.price ?? 0;
  const count = each < BAG.belowMinor ? Math.max(BAG.count, needed) : needed;
  const order_id = `order-${clock.newId()}`;
  const lines = [{ part, name, count, price_minor: each * count }];
  const { currency } = bench.state().settings;
  note(place, 'order-placed', { order_id, supplier: 'Pennant Parts', lines, postage_minor: 180, currency });
  clock.pass(DELIVERY_MINUTES);
  note(place, 'order-arrived', { order_id, place: 'drawer' });
  place.say(`    Ordered ${count} × ${name} for ${pounds(place, each * count)}; two days later they are here.`);
}
