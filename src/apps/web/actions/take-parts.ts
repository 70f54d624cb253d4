import type { DrawerView } from '../../../bench/views/index.ts';
import type { Draft } from './gesture.ts';

export interface PartNeed {
  readonly part: string;
  readonly count: number;
}

type Bags = Pick<DrawerView['bags'][number], 'id' | 'part' | 'count'>[];

/** Takes the parts from the bags that hold them, in the order of the drawer; what no bag holds is not taken. */
export function takeParts(itemId: string, needs: readonly PartNeed[], bags: Readonly<Bags>): Draft[] {
  return needs.flatMap((need) => {
    let left = need.count;
    return bags.flatMap((bag): Draft[] => {
      const count = bag.part === need.part ? Math.min(left, bag.count) : 0;
      left -= count;
      return count > 0 ? [{ kind: 'part-used', body: { bag_id: bag.id, item_id: itemId, count } }] : [];
    });
  });
}
