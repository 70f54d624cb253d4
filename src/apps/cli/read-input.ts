import { problemFor } from '../../bench/words.ts';
import type { CliParts } from './cli-parts.ts';
import { EXIT, misuse, Stop } from './stop.ts';

/** The most that a file of each kind may have, in bytes: what is larger was not meant for this. */
export const MOST_BYTES = { photo: 64 * 2 ** 20, text: 64 * 2 ** 20, pads: 8 * 2 ** 20, bundle: 2 ** 30 } as const;

/** The bytes of a file that the person named. Ends the command when it cannot be read, or has more than `mostBytes`, which are then not read. */
export async function readInput(parts: CliParts, file: string, mostBytes: number, where = 'FILE'): Promise<Uint8Array> {
  const bytes = await parts.readFile(file, mostBytes).catch(() => {
    throw misuse('no-such-file', { where, detail: file });
  });
  if (bytes === 'too-large')
    throw new Stop(EXIT.usage, problemFor('file-too-large', { where: file, detail: String(Math.round(mostBytes / 2 ** 20)) }));
  return bytes;
}

/** The same as text. */
export const readText = async (parts: CliParts, file: string, mostBytes: number = MOST_BYTES.text): Promise<string> =>
  new TextDecoder().decode(await readInput(parts, file, mostBytes));
