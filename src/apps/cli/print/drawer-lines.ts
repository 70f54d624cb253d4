import type { DrawerView } from '../../../bench/views/index.ts';
import { moneyText } from '../money.ts';
import { percent, table } from './table.ts';

/** What lies in the drawer and what is on its way. */
export function drawerLines(drawer: DrawerView): string[] {
  const { assemblies, bags, orders, short, currency } = drawer;
  if (assemblies.length + bags.length + orders.length + short.length === 0)
    return ['The drawer is empty. salvor add part notes a bag of parts.'];
  return [loose(assemblies), bagged(bags, currency), short.map(shortLine), orders.map(orderLine)]
    .filter((part) => part.length > 0)
    .flatMap((part, i) => (i === 0 ? part : ['', ...part]));
}

/** One sentence on a part that planned repairs lack. */
const shortLine = ({ name, wanted, expected, at_hand: held, on_its_way: coming, short, for: items }: DrawerView['short'][number]): string =>
  `Short of ${name}: repairs of ${items.join(', ')} may take ${wanted}, ${expected.toFixed(1)} on average; ${held} here, ${coming} on the way${short > 0 ? `, ${short} to order` : ''}.`;

const STATES: Readonly<Record<DrawerView['orders'][number]['state'], string>> = {
  ordered: 'On its way',
  late: 'Late',
  'partly-come': 'Partly come',
  come: 'Arrived',
  cancelled: 'Cancelled',
};

const orderLine = ({ id, state, lines, supplier, due_day: due }: DrawerView['orders'][number]): string => {
  const isPart = state !== 'ordered' && lines.some(({ count, came }) => came < count);
  const list = lines.map(({ count, came, name }) => `${isPart ? `${came} of ` : ''}${count} × ${name}`).join(', ');
  const by = due !== null && (state === 'ordered' || state === 'late' || state === 'partly-come') ? `, due ${due}` : '';
  return `${STATES[state]}: ${list} from ${supplier}${by} (${id})`;
};

const loose = (assemblies: DrawerView['assemblies']): string[] =>
  assemblies.length === 0
    ? []
    : table(
        ['no', 'assembly', 'slot', 'good', 'from'],
        assemblies.map(({ row, works_chance, from }) => [`${row.number}`, row.name, row.slot, percent(works_chance), from]),
        [0, 3],
      );

const bagged = (bags: DrawerView['bags'], currency: string): string[] =>
  bags.length === 0
    ? []
    : table(
        ['count', 'part', 'name', 'place', 'cost', 'bag'],
        bags.map((bag) => [
          `${bag.count}${bag.low ? ' (low)' : ''}`,
          bag.part,
          bag.name,
          bag.place,
          moneyText(bag.cost_minor, currency),
          bag.id,
        ]),
        [0, 4],
      );
