import { moneyIn } from '../money.ts';
import type { Session } from '../session.ts';
import { misuse } from '../stop.ts';
import { given, numberIn, type AddSpec, type Made, type Options } from './add-command.ts';

const FOREIGN = [
  ['--currency <code>', 'when it is not that of the bench'],
  ['--rate <number>', 'bench currency for one unit of it'],
] as const;

/** What is bought: lots of things, and parts. */
export const BUYING: readonly AddSpec[] = [
  {
    usage: 'lot',
    description: 'what was bought in one purchase; its cost is split over its items by what each is expected to be worth',
    options: [
      ['--title <title>', 'the title of the listing'],
      ['--seller <name>', 'who sold it'],
      ['--price <amount>', 'price of the lot'],
      ['--postage <amount>', 'postage to you'],
      ['--tax <amount>', 'tax on it'],
      ['--items <items>', 'NAME:MODEL:VALUE, with semicolons between; VALUE is what it is expected to be worth'],
      ...FOREIGN,
    ],
    example:
      'salvor add lot --title "Two dead players" --seller "Harbour Clearance" --price 24 --items "Blue:tern-tn10:20; Grey:tern-tn10:10"',
    make: lot,
  },
  {
    usage: 'part <part>',
    description: 'a bag of parts for the drawer',
    options: [
      ['--name <name>', 'what it is'],
      ['--count <count>', 'how many'],
      ['--price <amount>', 'for the whole bag, postage included'],
      ['--place <place>', 'where it lies'],
      ...FOREIGN,
    ],
    example: 'salvor add part speaker-20mm --name "Speaker 20 mm" --count 5 --price 4.50 --place "box 3"',
    make: (session, [part = ''], options) => {
      const currency = currencyOf(session, options);
      const bag = session.newId();
      const count = numberIn(options, 'count') ?? 1;
      const name = options.name ?? part;
      const price = moneyIn(options.price ?? '', currency, '--price');
      const body = { bag_id: bag, part, name, count, price_minor: price, currency, ...rateOf(options), ...given(options, 'place') };
      return { drafts: [{ kind: 'part-bought', body }], told: [`${count} × ${name} in the drawer, bag ${bag}`] };
    },
  },
  {
    usage: 'used <bag> <item> [count]',
    description: 'parts from a bag that went into an item',
    example: 'salvor add used 0198c… 1 2',
    make: (session, [bag = '', name = '', count = '']) => {
      const { id } = session.item(name);
      return { drafts: [{ kind: 'part-used', body: { bag_id: bag, item_id: id, count: count === '' ? 1 : Number(count) } }], itemId: id };
    },
  },
];

const currencyOf = (session: Session, options: Options): string => options.currency ?? session.bench.overview().currency;

function rateOf(options: Options): { rate?: number } {
  const rate = numberIn(options, 'rate');
  return rate === undefined ? {} : { rate };
}

function lot(session: Session, _args: readonly string[], options: Options): Made {
  const currency = currencyOf(session, options);
  for (const name of ['title', 'seller', 'price', 'items'])
    if (!options[name])
      throw misuse('bad-usage', { where: `--${name}`, detail: `A lot needs --title, --seller, --price and --items; --${name} is missing` });
  const money = (name: string): Record<string, number> =>
    options[name] === undefined ? {} : { [`${name}_minor`]: moneyIn(options[name], currency, `--${name}`) };
  const items = options.items!.split(';').map((text) => lotItem(session, text.trim(), currency));
  const body = {
    lot_id: session.newId(),
    ...given(options, 'title', 'seller'),
    ...money('price'),
    ...money('postage'),
    ...money('tax'),
    currency,
    ...rateOf(options),
    items,
  };
  return { drafts: [{ kind: 'lot-bought', body }], told: toldOf(session, items) };
}

function lotItem(session: Session, text: string, currency: string): Record<string, unknown> & { name: string } {
  const [name = '', model = '', value] = text.split(':').map((part) => part.trim());
  if (name === '' || model === '')
    throw misuse('bad-usage', {
      where: '--items',
      detail: `"${text}" is not an item of a lot: write NAME:MODEL:VALUE, such as Blue:tern-tn10:20`,
    });
  const expected = value === undefined || value === '' ? 0 : moneyIn(value, currency, '--items');
  return { item_id: session.newId(), name, model_id: model, expected_value_minor: expected };
}

function toldOf(session: Session, items: readonly { readonly name: string }[]): string[] {
  const { nextNumber } = session.bench.state();
  return [...items.map((item, i) => `#${nextNumber + i} ${item.name}`), `Next: when it has come, salvor add receive ${nextNumber}`];
}
