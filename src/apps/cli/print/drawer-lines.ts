import type { DrawerView } from '../../../bench/views/index.ts';
import { moneyText } from '../money.ts';
import { percent, table } from './table.ts';

/** What lies in the drawer and what is on its way. */
export function drawerLines(drawer: DrawerView): string[] {
  const { assemblies, bags, orders, currency } = drawer;
  if (assemblies.length + bags.length + orders.length === 0) return ['The drawer is empty. salvor add part notes a bag of parts.'];
  return [
    loose(assemblies),
    bagged(bags, currency),
    orders.map(
      (order) =>
        `${order.arrived_at ? 'Arrived' : 'On its way'}: ${order.lines.map((line) => `${line.count} × ${line.name}`).join(', ')} from ${order.supplier} (${order.id})`,
    ),
  ]
    .filter((part) => part.length > 0)
    .flatMap((part, i) => (i === 0 ? part : ['', ...part]));
}

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
