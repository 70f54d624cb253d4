import { moneyIn } from '../money.ts';
import type { Session } from '../session.ts';
import { given, minutesOf, numberIn, TEXT, type AddSpec, type Options } from './add-command.ts';

/** From the proof to the end of a unit's stay. */
export const SELLING: readonly AddSpec[] = [
  {
    usage: 'proof <item> <steps> <outcome>',
    description: 'steps of the proof, with commas between: pass, fail, or signed-off with a reason; salvor show ITEM lists them',
    options: [
      ['--reason <text>', 'why it may leave all the same'],
      ['--minutes <minutes>', 'time that they took together'],
    ],
    example: 'salvor add proof 1 works.sound,works.keys pass --minutes 4',
    make: (session, [name = '', steps = '', outcome = ''], options) => {
      const { id } = session.item(name);
      const drafts = steps.split(',').map((step, i) => {
        const minutes = i === 0 ? minutesOf(options) : {};
        return {
          kind: 'proof-step-done',
          body: { item_id: id, step: step.trim(), outcome, ...given(options, 'reason'), ...minutes },
        } as const;
      });
      return { drafts, itemId: id };
    },
  },
  {
    usage: 'grade <item> <grade>',
    description: 'its condition: A, B, C, D or parts',
    options: [TEXT],
    example: 'salvor add grade 1 B --text "light scratches on the back"',
    make: (session, [name = '', grade = ''], options) => {
      const { id } = session.item(name);
      return { drafts: [{ kind: 'graded', body: { item_id: id, scale: 'salvor-1', grade, ...given(options, 'text') } }], itemId: id };
    },
  },
  {
    usage: 'listed <item> <price> <place>',
    description: 'it is offered at a price',
    example: 'salvor add listed 1 45 "market hall"',
    make: (session, [name = '', price = '', place = '']) => {
      const { id } = session.item(name);
      return { drafts: [{ kind: 'listed', body: { item_id: id, price_minor: own(session, price, 'PRICE'), place } }], itemId: id };
    },
  },
  {
    usage: 'sold <item> <price>',
    description: 'it is sold',
    options: [
      ['--as <what>', 'working or for-parts; working unless told'],
      ['--postage-charged <amount>', 'postage that the buyer paid'],
      ['--fees <amount>', 'selling fees'],
      ['--postage <amount>', 'postage that you paid'],
      ['--buyer <name>', 'who bought it'],
      ['--currency <code>', 'when it is not that of the bench'],
      ['--rate <number>', 'bench currency for one unit of it'],
    ],
    example: 'salvor add sold 1 45 --fees 4.50 --postage 3.20',
    make: sold,
  },
  {
    usage: 'returned <item> <refund>',
    description: 'it came back and was refunded',
    options: [
      ['--fees-back <amount>', 'fees that came back'],
      ['--postage <amount>', 'postage that you paid for it'],
      ['--reason <text>', 'why'],
    ],
    example: 'salvor add returned 1 45 --reason "sound drops out when warm"',
    make: (session, [name = '', refund = ''], options) => {
      const { id } = session.item(name);
      const amounts = {
        refund_minor: own(session, refund, 'REFUND'),
        ...amount(session, options, 'feesBack', 'fees_back_minor'),
        ...amount(session, options, 'postage', 'postage_minor'),
      };
      return { drafts: [{ kind: 'returned', body: { item_id: id, ...amounts, ...given(options, 'reason') } }], itemId: id };
    },
  },
  {
    usage: 'scrapped <item> <reason>',
    description: 'what is left of it is thrown away; lithium cells go to a collection point, never into the bin',
    example: 'salvor add scrapped 2 "board corroded through"',
    make: (session, [name = '', reason = '']) => {
      const { id } = session.item(name);
      return { drafts: [{ kind: 'scrapped', body: { item_id: id, reason } }], itemId: id };
    },
  },
  {
    usage: 'kept <item> [reason]',
    description: 'you keep it for yourself',
    example: 'salvor add kept 1',
    make: (session, [name = '', reason = '']) => {
      const { id } = session.item(name);
      return { drafts: [{ kind: 'kept', body: { item_id: id, reason } }], itemId: id };
    },
  },
];

const own = (session: Session, text: string, where: string): number => moneyIn(text, session.bench.overview().currency, where);

const amount = (session: Session, options: Options, option: string, field: string): Record<string, number> =>
  options[option] === undefined ? {} : { [field]: own(session, options[option], `--${option}`) };

function sold(session: Session, [name = '', price = '']: readonly string[], options: Options): ReturnType<AddSpec['make']> {
  const { id } = session.item(name);
  const currency = options.currency ?? session.bench.overview().currency;
  const money = (text: string | undefined, where: string): number => moneyIn(text ?? '0', currency, where);
  const body = {
    item_id: id,
    as: options.as ?? 'working',
    price_minor: money(price, 'PRICE'),
    postage_charged_minor: money(options.postageCharged, '--postage-charged'),
    fees_minor: money(options.fees, '--fees'),
    postage_minor: money(options.postage, '--postage'),
    currency,
    rate: numberIn(options, 'rate') ?? 1,
    ...given(options, 'buyer'),
  };
  return { drafts: [{ kind: 'sold', body }], itemId: id };
}
