import { recordOf } from '../../../bench/fit/index.ts';
import { moneyIn } from '../money.ts';
import { patternFile } from '../pattern-file.ts';
import type { Draft, Session } from '../session.ts';
import { misuse } from '../stop.ts';
import { given, numberIn, type AddSpec, type Made, type Options } from './add-command.ts';

const FOREIGN = [
  ['--currency <code>', 'when it is not that of the bench'],
  ['--rate <number>', 'bench currency for one unit of it'],
] as const;

const PATTERN = ['--pattern <file>', 'terminals of one of them: a .kicad_mod file or a table (CSV)'] as const;

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
      PATTERN,
      ...FOREIGN,
    ],
    example: 'salvor add part speaker --name "Speaker 28 mm" --count 5 --price 4.50 --place "box 3"',
    make: async (session, [part = ''], options) => {
      const currency = currencyOf(session, options);
      const bag = session.newId();
      const count = numberIn(options, 'count') ?? 1;
      const name = options.name ?? partName(session, part);
      const price = moneyIn(options.price ?? '', currency, '--price');
      const more = { ...rateOf(options), ...given(options, 'place'), ...(await terminals(session, options)) };
      const body = { bag_id: bag, part, name, count, price_minor: price, currency, ...more };
      return { drafts: [{ kind: 'part-bought', body }], told: [`${count} × ${name} in the drawer, bag ${bag}`] };
    },
  },
  {
    usage: 'bag <bag>',
    description: 'where a bag lies now, or what terminals its parts have',
    options: [['--place <place>', 'where it lies'], PATTERN],
    example: 'salvor add bag 0198c… --pattern socket.kicad_mod',
    make: async (session, [bag = ''], options) => {
      const body = { bag_id: bag, ...given(options, 'place'), ...(await terminals(session, options)) };
      return { drafts: [{ kind: 'bag-set', body }] };
    },
  },
  {
    usage: 'used <part> <item> [count]',
    description: 'parts from the drawer that went into an item: the bag by its id, or the first bags of that kind of part',
    example: 'salvor add used cleaning 1',
    make: used,
  },
  {
    usage: 'order <supplier>',
    description: 'parts that were ordered and paid',
    options: [
      ['--parts <parts>', 'PART:COUNT:PRICE, with semicolons between; PRICE is for the whole line'],
      ['--postage <amount>', 'postage of the order'],
      ...FOREIGN,
    ],
    example: 'salvor add order "Quay Components" --parts "speaker:2:3.20; fuse:10:1.50" --postage 2.80',
    make: order,
  },
  {
    usage: 'arrived <order> [place]',
    description: 'an order has come, and its parts lie in the drawer now',
    example: 'salvor add arrived 0198c… "box 3"',
    make: (_session, [id = '', place = '']) => ({ drafts: [{ kind: 'order-arrived', body: { order_id: id, place } }] }),
  },
];

/** `{pattern}` of the file that was named. */
async function terminals({ parts }: Session, { pattern }: Options): Promise<{ pattern?: unknown }> {
  return pattern === undefined ? {} : { pattern: recordOf(await patternFile(parts, pattern)) };
}

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

/** From the first bags of a kind of part, or from the one bag of that id; a bag that is not there or holds too little is left to the rules. */
function used(session: Session, [part = '', name = '', count = '']: readonly string[]): Made {
  const { id } = session.item(name);
  let left = count === '' ? 1 : (numberIn({ count }, 'count') ?? 1);
  const bags = [...session.bench.state().bags.values()].filter((bag) => bag.part === part && bag.count > 0);
  const held = bags.reduce((sum, bag) => sum + bag.count, 0);
  if (bags.length === 0 || held < left) return { drafts: [useOf(bags[0]?.id ?? part, id, left)], itemId: id };
  const drafts = bags.flatMap((bag) => {
    const taken = Math.min(left, bag.count);
    left -= taken;
    return taken > 0 ? [useOf(bag.id, id, taken)] : [];
  });
  return { drafts, itemId: id };
}

const useOf = (bag: string, item: string, count: number): Draft => ({ kind: 'part-used', body: { bag_id: bag, item_id: item, count } });

function order(session: Session, [supplier = '']: readonly string[], options: Options): Made {
  const currency = currencyOf(session, options);
  if (!options.parts) throw misuse('bad-usage', { where: '--parts', detail: 'An order needs --parts, such as "fuse:10:1.50"' });
  const lines = options.parts.split(';').map((text) => orderLine(session, text.trim(), currency));
  const id = session.newId();
  const postage = options.postage === undefined ? {} : { postage_minor: moneyIn(options.postage, currency, '--postage') };
  const body = { order_id: id, supplier, lines, ...postage, currency, ...rateOf(options) };
  return {
    drafts: [{ kind: 'order-placed', body }],
    told: [`Ordered from ${supplier}.`, `Next: when it has come, salvor add arrived ${id}`],
  };
}

function orderLine(session: Session, text: string, currency: string): Record<string, unknown> {
  const [part = '', count = '', price = ''] = text.split(':').map((each) => each.trim());
  if (part === '' || !/^\d+$/.test(count) || price === '')
    throw misuse('bad-usage', {
      where: '--parts',
      detail: `"${text}" is not a line of an order: write PART:COUNT:PRICE, such as fuse:10:1.50`,
    });
  return { part, name: partName(session, part), count: Number(count), price_minor: moneyIn(price, currency, '--parts') };
}

/** What the models call a part; its id where none knows it. */
function partName({ bench }: Session, part: string): string {
  const known = bench.models().flatMap(({ id }) => bench.model(id)?.file.parts.filter((each) => each.id === part) ?? []);
  return known[0]?.name ?? part;
}
