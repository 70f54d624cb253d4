import type { BenchEvent, Kind, Stored } from './events/index.ts';
import { isForeign } from './events/index.ts';
import { SENTENCES } from './log-sentences.ts';
import { logWords, type LogWords } from './log-words.ts';
import type { Model } from './models/index.ts';
import type { BenchState } from './state.ts';
import type { LogLine } from './views/index.ts';

/** An event as a line of a log: one plain sentence, whether it was undone, and the photo that it is about. */
export function logLine(stored: Stored, state: Readonly<BenchState>, models: ReadonlyMap<string, Model>): LogLine {
  const { event, seq } = stored;
  const foreign = isForeign(event);
  return {
    event_id: event.id,
    seq,
    at: event.at,
    device: event.device,
    kind: event.kind,
    text: foreign
      ? `Recorded by a newer version as "${event.kind}"; kept, and not understood here.`
      : sentenceOf(logWords(state, models), event),
    corrected: state.corrected.has(event.id),
    foreign,
    photo: !foreign && event.kind === 'photo-taken' ? event.body.photo : null,
  };
}

/** The sentence of its kind; a text of the person that ends it with a mark of its own keeps that mark. */
export function sentenceOf(words: LogWords, event: BenchEvent): string {
  const say = SENTENCES[event.kind] as (words: LogWords, body: EventBody) => string;
  return say(words, event.body).replace(/([.!?…])\.$/, '$1');
}

type EventBody = Extract<BenchEvent, { kind: Kind }>['body'];
