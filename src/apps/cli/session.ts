import { resolve } from 'node:path';
import type { Command } from 'commander';
import { EVENT_VERSION, type Body, type Kind } from '../../bench/events/index.ts';
import { findItem } from '../../bench/show/item-file.ts';
import type { Item } from '../../bench/state.ts';
import { problemFor, problemOfRefusal, problemOfStore } from '../../bench/words.ts';
import type { CliParts, OpenedBench } from './cli-parts.ts';
import { EXIT, misuse, Stop } from './stop.ts';

export interface Draft<K extends Kind = Kind> {
  readonly kind: K;
  readonly body: Body<K> | Readonly<Record<string, unknown>>;
}

export interface Noted {
  readonly stored: readonly { readonly id: string; readonly seq: number; readonly duplicate: boolean }[];
}

/** One run of a command on one bench. */
export interface Session extends OpenedBench {
  readonly parts: CliParts;
  readonly isJson: boolean;
  /** Shows an answer: the object itself with --json, its lines otherwise. */
  show(answer: unknown, lines: () => readonly string[]): void;
  /** The item of an id or stock number, such as 7 or #7. */
  item(name: string): Item;
  newId(): string;
  /** Stores a gesture, all or nothing. Ends the command when a rule refuses it. */
  note(drafts: readonly Draft[]): Noted;
}

export const homeOf = (command: Command, parts: CliParts): string =>
  resolve((command.optsWithGlobals().home as string | undefined) ?? (parts.env.SALVOR_HOME || 'bench-data'));

/** Opens the bench of a command, does the work, and lets go of it in every case. */
export async function withSession(
  command: Command,
  parts: CliParts,
  work: (session: Session) => Promise<void> | void,
  options: { readonly compute?: boolean } = {},
): Promise<void> {
  const home = homeOf(command, parts);
  const opened = await open(parts, home, options.compute ?? false);
  try {
    await work(sessionOf(opened, parts, Boolean(command.optsWithGlobals().json)));
  } finally {
    await opened.close();
  }
}

async function open(parts: CliParts, home: string, compute: boolean): Promise<OpenedBench> {
  try {
    return await parts.open(home, compute);
  } catch (error) {
    const detail = error instanceof Error ? error.message : String(error);
    throw new Stop(EXIT.store, problemOfStore(error) ?? problemFor('store-trouble', { where: home, detail }));
  }
}

function sessionOf(opened: OpenedBench, parts: CliParts, isJson: boolean): Session {
  const { bench, device } = opened;
  return {
    ...opened,
    parts,
    isJson,
    show: (answer, lines) => parts.out(isJson ? JSON.stringify(answer, null, 2) : lines().join('\n')),
    item(name) {
      const found = findItem(bench.state(), name);
      if (!found) throw misuse('no-such-item', { where: 'ITEM', detail: name });
      return found;
    },
    newId: () => parts.clock.newId(),
    note(drafts) {
      const at = parts.clock.now().toISOString();
      const events = drafts.map((draft) => ({ id: parts.clock.newId(), at, device, version: EVENT_VERSION, ...draft }));
      const result = bench.record(events);
      if (result.ok) return { stored: result.stored };
      throw new Stop(result.code === 'bad-event' ? EXIT.usage : EXIT.refused, problemOfRefusal(result, drafts.length));
    },
  };
}
