import { table } from '../print/table.ts';
import { pounds, type Workplace } from './workplace.ts';

/** The books of what was bought: each unit's money, what lies in the drawer, and whether the ledger balances. */
export function sayBooks(place: Workplace): void {
  const books = place.bench.books();
  const money = (minor: number | null) => (minor === null ? '' : pounds(place, minor));
  const rows = books.units.map(({ row, ...unit }) => [
    `#${row.number}`,
    row.name,
    row.status,
    money(unit.cost_minor),
    money(unit.income_minor),
    money(unit.profit_minor),
    `${Math.round(unit.minutes)}`,
  ]);
  place.say('');
  place.say('Books');
  for (const line of table(['no', 'name', 'status', 'cost', 'income', 'profit', 'minutes'], rows, [3, 4, 5, 6])) place.say(`  ${line}`);
  place.say(
    `  In the drawer: assemblies for ${money(books.stock_minor)}, parts for ${money(books.parts_minor)}. Cash: ${money(books.cash_minor)}.`,
  );
  place.say(books.balanced ? '  The ledger is balanced.' : '  The ledger is NOT balanced: please report it with the seed.');
}

/** What was really wrong, told at the end. */
export function sayTruth(place: Workplace, wrongWith: ReadonlyMap<string, string>): void {
  place.say('');
  place.say('What was really wrong (the bench never saw this list)');
  for (const [id, words] of wrongWith) {
    const { row } = place.bench.item(id)!;
    place.say(`  #${row.number} ${row.name}: ${words}; it ended ${row.status.replaceAll('-', ' ')}`);
  }
}
