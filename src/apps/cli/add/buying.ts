import { recordOf } from '../../../bench/fit/index.ts';
import { moneyIn } from '../money.ts';
import { patternFile } from '../pattern-file.ts';
import type { Draft, Session } from '../session.ts';
import { misuse } from '../stop.ts';
import { given, numberIn, type AddSpec, type Made, type Options } from './add-command.ts';
import { currencyOf, FOREIGN, partName, rateOf } from './currency.ts';

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
];

/** `{pattern}` of the file that was named. */
async function terminals({ parts }: Session, { pattern }: Options): Promise<{ pattern?: unknown }> {
  return pattern === undefined ? {} : { pattern: recordOf(await patternFile(parts, pattern)) };
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
