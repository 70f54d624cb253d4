import type { Command } from 'commander';
import type { CliParts } from '../cli-parts.ts';
import { withSession, type Draft, type Session } from '../session.ts';
import { misuse } from '../stop.ts';

export type Options = Readonly<Record<string, string | undefined>>;

/** One kind of evidence or work as a command: what is typed, and the gesture that it makes. */
export interface AddSpec {
  /** As commander takes it: `trial <item> <function> <outcome>`. */
  readonly usage: string;
  readonly description: string;
  /** Pairs of flags and their meaning. */
  readonly options?: readonly (readonly [string, string])[];
  readonly example: string;
  /** The events, and the item that they are about, for telling what next. */
  readonly make: (session: Session, args: readonly string[], options: Options) => Made | Promise<Made>;
}

export interface Made {
  readonly drafts: readonly Draft[];
  readonly itemId?: string;
  /** What came about, where the log of an item does not tell it. */
  readonly told?: readonly string[];
}

/** Declares a command below `salvor add`; what it notes is shown in the words of the log, with what next. */
export function addCommand(add: Command, parts: CliParts, spec: AddSpec): void {
  const command = add.command(spec.usage).description(spec.description).addHelpText('after', `\nExample: ${spec.example}`);
  for (const [flags, meaning] of spec.options ?? []) command.option(flags, meaning);
  command.action((...all: unknown[]) => {
    const args = all.slice(0, -2).flat() as (string | undefined)[];
    return withSession(all.at(-1) as Command, parts, async (session) => {
      const made = await spec.make(
        session,
        args.map((arg) => arg ?? ''),
        all.at(-2) as Options,
      );
      show(session, made);
    });
  });
}

function show(session: Session, made: Made): void {
  const noted = session.note(made.drafts);
  session.show(noted, () => {
    const ids = new Set(noted.stored.map(({ id }) => id));
    const file = made.itemId === undefined ? null : session.bench.item(made.itemId);
    const log = file?.log.filter((line) => ids.has(line.event_id)).map((line) => line.text) ?? [];
    const told = made.told ?? (log.length > 0 ? log : ['Noted.']);
    return file ? [...told, `Next: ${file.advice.headline}`] : told;
  });
}

/** A number in an option; undefined when the option was not given. */
export function numberIn(options: Options, name: string): number | undefined {
  const text = options[name];
  if (text === undefined) return undefined;
  const value = Number(text);
  if (text.trim() === '' || !Number.isFinite(value))
    throw misuse('bad-usage', { where: `--${name}`, detail: `--${name} takes a number, not "${text}"` });
  return value;
}

export const MINUTES = ['--minutes <minutes>', 'time that it took'] as const;
export const TEXT = ['--text <text>', 'more, in your own words'] as const;

/** `{minutes}` when given. */
export function minutesOf(options: Options): { minutes?: number } {
  const minutes = numberIn(options, 'minutes');
  return minutes === undefined ? {} : { minutes };
}

/** The named options that were given, under their names. */
export const given = (options: Options, ...names: readonly string[]): Record<string, string> =>
  Object.fromEntries(names.flatMap((name) => (options[name] === undefined ? [] : [[name, options[name]]])));
