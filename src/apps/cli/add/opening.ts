import { stepEvents } from '../../../bench/hands/index.ts';
import { misuse } from '../stop.ts';
import { minutesOf, MINUTES, numberIn, type AddSpec } from './add-command.ts';

/** What is ticked while a device is opened and closed. */
export const OPENING: readonly AddSpec[] = [
  {
    usage: 'step <item> <step>',
    description: 'a step of opening that was done, or put back; what is missing or foreign among its fasteners becomes a finding',
    options: [
      ['--back', 'put back, on the way to closing it'],
      ['--fasteners <count>', 'how many came out, or went in again'],
      ['--foreign <count>', 'how many of them are of another kind'],
      MINUTES,
    ],
    example: 'salvor add step 1 back-screws-out --fasteners 4 --foreign 1 --minutes 2',
    make: (session, [name = '', step = ''], options) => {
      const { id, modelId } = session.item(name);
      const model = session.bench.model(modelId);
      if (!model) throw misuse('no-such-model', { where: 'ITEM', detail: modelId });
      const count = numberIn(options, 'fasteners');
      const counted = count === undefined ? null : { count, foreign: numberIn(options, 'foreign') ?? 0 };
      const way = options.back === undefined ? 'in' : 'back';
      return { drafts: stepEvents(model.file, { itemId: id, step, way, counted, minutes: minutesOf(options).minutes ?? 0 }), itemId: id };
    },
  },
];
