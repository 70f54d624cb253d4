import { basename } from 'node:path';
import { problemOfPhoto } from '../../../bench/words.ts';
import type { Session } from '../session.ts';
import { MOST_BYTES, readInput } from '../read-input.ts';
import { EXIT, Stop } from '../stop.ts';
import type { AddSpec } from './add-command.ts';

/** Pictures of an item: all of them are kept, or none is noted. */
export const PHOTO: AddSpec = {
  usage: 'photo <item> <files...>',
  description: 'hangs pictures on an item (JPEG, PNG, WebP)',
  options: [
    ['--side <side>', 'front, back, inside, board-front, board-back or other'],
    ['--caption <text>', 'what it shows'],
  ],
  example: 'salvor add photo 1 front.jpg back.jpg --side front',
  make: async (session, [name = '', ...files], { side, caption }) => {
    const { id } = session.item(name);
    const hashes = await Promise.all(files.map((file) => keepPhoto(session, file)));
    const more = { ...(side ? { side } : {}), ...(caption ? { caption } : {}) };
    return { drafts: hashes.map((photo) => ({ kind: 'photo-taken', body: { item_id: id, photo, ...more } }) as const), itemId: id };
  },
};

/** Hash of a picture that the bench now keeps; ends the command when it cannot be kept. */
export async function keepPhoto(session: Session, file: string): Promise<string> {
  const bytes = await readInput(session.parts, file, MOST_BYTES.photo);
  const kept = await session.photos.put(basename(file), bytes);
  if (!kept.ok) throw new Stop(EXIT.usage, problemOfPhoto(kept));
  return kept.photo.hash;
}
