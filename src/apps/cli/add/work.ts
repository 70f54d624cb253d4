import type { Session } from '../session.ts';
import { given, minutesOf, MINUTES, numberIn, TEXT, type AddSpec, type Made, type Options } from './add-command.ts';

/** What is done at the bench. */
export const WORK: readonly AddSpec[] = [
  {
    usage: 'receive <item> [condition]',
    description: 'it has come; note its condition before anything is touched',
    example: 'salvor add receive 1 "box dented, seal whole"',
    make: (session, [name = '', condition = '']) => {
      const { id } = session.item(name);
      return { drafts: [{ kind: 'item-received', body: { item_id: id, condition } }], itemId: id };
    },
  },
  {
    usage: 'opened <item> <stage>',
    description: 'how far it is opened now: closed, open or board-out',
    options: [MINUTES],
    example: 'salvor add opened 1 open --minutes 4',
    make: (session, [name = '', stage = ''], options) => {
      const { id } = session.item(name);
      return { drafts: [{ kind: 'opened-to', body: { item_id: id, stage, ...minutesOf(options) } }], itemId: id };
    },
  },
  {
    usage: 'remedy <item> <remedy> <outcome>',
    description: 'a remedy that was done: mended, not-mended, made-worse or not-tried-yet',
    options: [['--place <place>', 'where, when the remedy does not say'], MINUTES, TEXT],
    example: 'salvor add remedy 1 clean-slot mended --minutes 6',
    make: (session, [name = '', remedy = '', outcome = ''], options) => {
      const { id } = session.item(name);
      const body = { item_id: id, remedy, outcome, minutes: numberIn(options, 'minutes') ?? 0, ...given(options, 'place', 'text') };
      return { drafts: [{ kind: 'remedy-done', body }], itemId: id };
    },
  },
  {
    usage: 'transplant <slot>',
    description: 'an assembly moves from one unit to another, or to and from the drawer',
    options: [
      ['--from <item>', 'the unit that it comes out of; not given: it lies in the drawer'],
      ['--to <item>', 'the unit that it goes into; not given: the drawer'],
      ['--assembly <item>', 'the assembly, where it is known by a name already'],
      ['--name <name>', 'its name, when it is taken out for the first time'],
      MINUTES,
    ],
    example: 'salvor add transplant display --from 2 --to 1 --minutes 15',
    make: transplant,
  },
  {
    usage: 'declined <item> [reason]',
    description: 'you disagree with what is advised for it now; it is not advised again, and the next best comes',
    example: 'salvor add declined 1 "the meter is away"',
    make: (session, [name = '', reason = '']) => {
      const { id } = session.item(name);
      const advice = session.bench.item(id)!.advice.id;
      return { drafts: [{ kind: 'advice-declined', body: { item_id: id, advice, reason } }], itemId: id };
    },
  },
  {
    usage: 'note <text>',
    description: 'something to remember',
    options: [['--item <item>', 'about this item']],
    example: 'salvor add note "two screws of the back are longer" --item 1',
    make: (session, [text = ''], options) => {
      const about = options.item === undefined ? {} : { item_id: session.item(options.item).id };
      return { drafts: [{ kind: 'note-written', body: { text, ...about } }], ...itemOf(about) };
    },
  },
  {
    usage: 'time <minutes> <task>',
    description: 'time on the clock that no other note holds',
    options: [['--item <item>', 'spent on this item']],
    example: 'salvor add time 20 "photos for the listing" --item 1',
    make: (session, [minutes = '', task = ''], options) => {
      const about = options.item === undefined ? {} : { item_id: session.item(options.item).id };
      return { drafts: [{ kind: 'time-clocked', body: { minutes: numberIn({ minutes }, 'minutes'), task, ...about } }], ...itemOf(about) };
    },
  },
];

const itemOf = ({ item_id }: { item_id?: string }): { itemId?: string } => (item_id === undefined ? {} : { itemId: item_id });

function transplant(session: Session, [slot = '']: readonly string[], options: Options): Made {
  const idOf = (name: string | undefined): string | null => (name === undefined ? null : session.item(name).id);
  const [from, to] = [idOf(options.from), idOf(options.to)];
  const assembly = options.assembly === undefined ? session.newId() : session.item(options.assembly).id;
  const body = { assembly_id: assembly, slot, from_item: from, to_item: to, ...given(options, 'name'), ...minutesOf(options) };
  const about = to ?? from;
  return { drafts: [{ kind: 'transplant-done', body }], ...(about === null ? {} : { itemId: about }) };
}
