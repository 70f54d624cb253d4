import type { Command } from 'commander';
import { resolve } from 'node:path';
import { makeBackup, restoreBackup, tryBackup } from '../../../bench/backup/index.ts';
import { problemFor, problemOfBackup, problemOfTaking } from '../../../bench/words.ts';
import type { CliParts } from '../cli-parts.ts';
import { counted } from '../print/counted.ts';
import { table } from '../print/table.ts';
import { withSession, type Session } from '../session.ts';
import { EXIT, Stop } from '../stop.ts';

interface BackupOptions {
  readonly folder?: string;
  readonly nightly?: string;
  readonly list?: boolean;
  readonly try?: string;
}

/** Copies for safety: making, choosing where they go, trying, and bringing back. */
export function backupCommands(program: Command, parts: CliParts): void {
  program
    .command('backup')
    .description('makes a backup and proves that it opens to the same bench, or says where backups go')
    .option('--folder <dir>', 'where backups go from now on; "inside" for the folder of the bench itself')
    .option('--nightly <on|off>', 'whether the server makes one each night')
    .option('--list', 'lists those that there are')
    .option('--try <name>', 'the restore drill on one of them, or on a file elsewhere')
    .addHelpText('after', '\nExample: salvor backup --list')
    .action((options: BackupOptions, command: Command) => withSession(command, parts, (session) => backup(session, options)));
  program
    .command('restore')
    .argument('<file>', 'a backup, with its folder photos beside it')
    .description('brings a backup back into an empty bench')
    .addHelpText('after', '\nExample: salvor restore /media/stick/salvor/salvor-….zip --home ./fresh-bench')
    .action((file: string, _options: unknown, command: Command) => withSession(command, parts, (session) => restore(session, file)));
}

async function backup(session: Session, options: BackupOptions): Promise<void> {
  if (options.folder !== undefined || options.nightly !== undefined) await choose(session, options);
  if (options.list) return list(session);
  if (options.try !== undefined) return drill(session, options.try);
  if (options.nightly !== undefined && options.folder === undefined) return sayPlan(session);
  return make(session);
}

const stopFor = (trouble: Parameters<typeof problemOfBackup>[0]): Stop => new Stop(EXIT.store, problemOfBackup(trouble));

async function choose({ backups }: Session, { folder, nightly }: BackupOptions): Promise<void> {
  if (nightly !== undefined && nightly !== 'on' && nightly !== 'off')
    throw new Stop(EXIT.usage, problemFor('bad-usage', { detail: `--nightly takes on or off, not "${nightly}"` }));
  const before = backups.plan();
  const chosen = folder === undefined ? before.folder : folder === 'inside' ? null : resolve(folder);
  const set = await backups.setPlan({ folder: chosen, nightly: nightly === undefined ? before.nightly : nightly === 'on' });
  if (!set.ok) throw stopFor(set);
}

function sayPlan({ backups, show }: Session): void {
  const { nightly } = backups.plan();
  show({ used_folder: backups.folder(), nightly }, () => [
    nightly ? `A backup goes into ${backups.folder()} each night while the server runs.` : `No backup is made at night. ${NOW}`,
  ]);
}

const NOW = 'salvor backup makes one now.';

async function make({ bench, photos, backups, parts, show }: Session): Promise<void> {
  const made = await makeBackup({ bench, photos, shelf: backups, clock: parts.clock, version: parts.version });
  if (!made.ok) throw stopFor(made);
  const { backup: entry, tried, removed } = made;
  show({ ...entry, photos: tried.photos, digest: tried.digest, removed }, () => [
    `${counted(tried.events, 'event')} and ${counted(tried.photos, 'photo')} are in ${entry.name} in ${backups.folder()}.`,
    `Tried: it opens, and gives the same bench (${tried.digest.slice(0, 12)}).`,
    ...(removed.length > 0 ? [`Let go of ${counted(removed.length, 'older backup')}.`] : []),
    ...(backups.plan().folder === null ? ['It lies on the same disk as the bench: choose another one with --folder.'] : []),
  ]);
}

async function list({ backups, show }: Session): Promise<void> {
  const listed = await backups.list();
  if (!listed.ok) throw stopFor(listed);
  show({ used_folder: backups.folder(), backups: listed.backups }, () => [
    ...table(
      ['made', 'events', 'file'],
      listed.backups.map(({ madeAt, events, name }) => [madeAt, String(events), name]),
      [1],
    ),
    `${counted(listed.backups.length, 'backup')} in ${backups.folder()}.`,
  ]);
}

async function drill({ bench, backups, show }: Session, name: string): Promise<void> {
  const tried = await tryBackup(backups, bench, name);
  if (!tried.ok) throw stopFor(tried);
  show({ name, events: tried.events, photos: tried.photos, digest: tried.digest }, () => [
    `It holds: ${counted(tried.events, 'event')} and ${counted(tried.photos, 'photo')}, each with its hash. State ${tried.digest.slice(0, 12)}.`,
  ]);
}

async function restore({ bench, photos, backups, show }: Session, file: string): Promise<void> {
  const taken = await restoreBackup(bench, photos, backups, file);
  if (taken.ok) {
    return show({ events: taken.events, photos: taken.photos }, () => [
      `Brought back: ${counted(taken.events, 'event')} and ${counted(taken.photos, 'photo')}.`,
      'Next: salvor plan',
    ]);
  }
  if ('where' in taken) throw stopFor(taken);
  throw new Stop(taken.code === 'not-empty' ? EXIT.refused : EXIT.usage, problemOfTaking(taken, 0));
}
