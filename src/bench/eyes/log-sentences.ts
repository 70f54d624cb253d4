import type { EventOf } from '../events/index.ts';
import type { LogWords } from '../log-words.ts';
import { DIFFERENCE_WORDS, SIDE_NAMES } from './picture-words.ts';

const VERDICTS = { real: 'really there', normal: 'normal for this model', 'not-sure': 'not sure' } as const;

/** What the log says of photos that are compared. */
export const PICTURE_SENTENCES = {
  'reference-set': (_words: LogWords, { model_id: model, side, photo, use }: EventOf<'reference-set'>['body']) => {
    const which = photo === 'shipped' ? 'the photo that the model comes with' : `photo ${photo.slice(0, 8)}`;
    return `Photos of the ${SIDE_NAMES[side]} of ${model} are ${use ? 'compared with' : 'not compared any more with'} ${which}.`;
  },
  'difference-judged': (words: LogWords, body: EventOf<'difference-judged'>['body']) => {
    const at = body.part === undefined ? '' : ` at ${body.part}`;
    const remark = body.text === '' ? '' : `: ${body.text}`;
    return `Difference on a photo of ${words.item(body.item_id)}${at}, ${DIFFERENCE_WORDS[body.shows]}: ${VERDICTS[body.verdict]}${remark}.`;
  },
};
