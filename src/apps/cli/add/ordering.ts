import type { Body } from '../../../bench/events/index.ts';
import { moneyIn } from '../money.ts';
import type { Session } from '../session.ts';
import { misuse } from '../stop.ts';
import { given, type AddSpec, type Made, type Options } from './add-command.ts';
import { currencyOf, FOREIGN, partName, rateOf } from './currency.ts';

/** Orders, from placing to their end. */
export const ORDERING: readonly AddSpec[] = [
  {
    usage: 'order <supplier>',
    description: 'parts that were ordered and paid',
    options: [
      ['--parts <parts>', 'PART:COUNT:PRICE, with semicolons between; PRICE is for the whole line'],
      ['--postage <amount>', 'postage of the order'],
      ['--due <day>', 'it should be here by then, such as 2026-05-01; after that it is late'],
      ...FOREIGN,
    ],
    example: 'salvor add order "Quay Components" --parts "speaker:2:3.20; fuse:10:1.50" --postage 2.80 --due 2026-05-09',
    make: order,
  },
  {
    usage: 'arrived <order> [place]',
    description: 'an order has come, or part of it, and lies in the drawer now',
    options: [['--counts <counts>', 'how many came of each line, in order, with commas between; else all that had not come']],
    example: 'salvor add arrived 0198c… "box 3" --counts 2,0',
    make: arrived,
  },
  {
    usage: 'cancelled <order>',
    description: 'what had not come of an order will not come; what is not paid back is lost',
    options: [
      ['--refund <amount>', 'what was paid back, in the currency of the bench'],
      ['--reason <text>', 'why'],
    ],
    example: 'salvor add cancelled 0198c… --refund 3.20 --reason "sold out"',
    make: (session, [id = ''], options) => {
      const { currency } = session.bench.overview();
      const refund = options.refund === undefined ? {} : { refund_minor: moneyIn(options.refund, currency, '--refund') };
      return { drafts: [{ kind: 'order-cancelled', body: { order_id: id, ...refund, ...given(options, 'reason') } }] };
    },
  },
];

function order(session: Session, [supplier = '']: readonly string[], options: Options): Made {
  const currency = currencyOf(session, options);
  if (!options.parts) throw misuse('bad-usage', { where: '--parts', detail: 'An order needs --parts, such as "fuse:10:1.50"' });
  const lines = options.parts.split(';').map((text) => orderLine(session, text.trim(), currency));
  const id = session.newId();
  const postage = options.postage === undefined ? {} : { postage_minor: moneyIn(options.postage, currency, '--postage') };
  const due = options.due === undefined ? {} : { due_day: options.due };
  const body = { order_id: id, supplier, lines, ...postage, ...due, currency, ...rateOf(options) };
  return {
    drafts: [{ kind: 'order-placed', body }],
    told: [`Ordered from ${supplier}.`, `Next: when it has come, salvor add arrived ${id}`],
  };
}

function orderLine(session: Session, text: string, currency: string): Body<'order-placed'>['lines'][number] {
  const [part = '', count = '', price = ''] = text.split(':').map((each) => each.trim());
  if (part === '' || !/^\d+$/.test(count) || price === '')
    throw misuse('bad-usage', {
      where: '--parts',
      detail: `"${text}" is not a line of an order: write PART:COUNT:PRICE, such as fuse:10:1.50`,
    });
  return { part, name: partName(session, part), count: Number(count), price_minor: moneyIn(price, currency, '--parts') };
}

function arrived(_session: Session, [id = '', place = '']: readonly string[], { counts }: Options): Made {
  const each = counts?.split(',').map((count) => count.trim());
  if (each?.some((count) => !/^\d{1,7}$/.test(count)))
    throw misuse('bad-usage', {
      where: '--counts',
      detail: `"${counts}" is no list of counts: write one for each line of the order, such as 2,0`,
    });
  return { drafts: [{ kind: 'order-arrived', body: { order_id: id, place, ...(each ? { counts: each.map(Number) } : {}) } }] };
}
