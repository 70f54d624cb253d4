import { postEvents } from '../api/post-events.ts';
import { postPhotos } from '../api/post-photos.ts';
import { ProblemError } from '../api/problem-error.ts';
import { sawUpTo } from '../api/seen-seq.ts';
import type { Content, Delivery } from './outbox.ts';

/** Answers that are about the parcel itself: they will be the same tomorrow. Everything else is about the way or the door. */
const LASTING: readonly number[] = [400, 409, 413, 415];

/** Sends what a parcel holds, as often as it takes: events carry their ids and pictures are named by their content. */
export async function sendContent(content: Content): Promise<Delivery> {
  try {
    if (content.what === 'photo') return await sendPhoto(content);
    const { stored } = await postEvents(content.events);
    sawUpTo(Math.max(...stored.map(({ seq }) => seq), 0));
    return { met: 'taken' };
  } catch (error) {
    if (error instanceof ProblemError && LASTING.includes(error.status)) return { met: 'refused', why: error.message };
    return { met: 'away' };
  }
}

async function sendPhoto({ name, picture }: Extract<Content, { what: 'photo' }>): Promise<Delivery> {
  const [result] = await postPhotos([new File([picture], name, { type: picture.type })]);
  if (!result) return { met: 'away' };
  return result.ok ? { met: 'taken' } : { met: 'refused', why: `${result.name}: ${result.message}` };
}
