import type { Command } from 'commander';
import { problemFor } from '../../../bench/words.ts';
import type { CliParts } from '../cli-parts.ts';
import { withSession, type Session } from '../session.ts';
import { EXIT, misuse, Stop } from '../stop.ts';

interface ReportOptions {
  readonly base: string;
}

interface StoryOptions {
  readonly money?: boolean;
  readonly persons?: boolean;
  readonly words?: boolean;
}

/** Pages and sheets about a unit for others. */
export function reportCommands(program: Command, parts: CliParts): void {
  program
    .command('report')
    .argument('<item>', 'id or stock number of a unit')
    .argument('<file>', 'where to: .pdf for a sheet, .html for a page')
    .description('writes the condition report of a unit: photos, what is original, tests with values, grade, cautions on its cell')
    .option('--base <address>', 'where the bench is opened from a phone, for the code on the report', 'http://127.0.0.1:4780')
    .addHelpText('after', '\nExample: salvor report 1 tern-report.pdf')
    .action((item: string, file: string, options: ReportOptions, command: Command) =>
      withSession(command, parts, (session) => report(session, item, file, options)),
    );
  program
    .command('story')
    .argument('<item>', 'id or stock number of a unit')
    .argument('<file>', 'where to: a .html page that holds its photos')
    .description('writes the story of a unit from its log: no money, names or own words unless they are asked for')
    .option('--money', 'with what it cost and brought')
    .option('--persons', 'with who sold it and who bought it')
    .option('--words', 'with notes, captions and remarks as they were typed')
    .addHelpText('after', '\nExample: salvor story 1 tern-story.html')
    .action((item: string, file: string, options: StoryOptions, command: Command) =>
      withSession(command, parts, (session) => story(session, item, file, options)),
    );
}

async function report(session: Session, name: string, file: string, { base }: ReportOptions): Promise<void> {
  const { bench, photos, parts } = session;
  const found = bench.conditionReport(session.item(name).id, (id) => `${base.replace(/\/$/, '')}/bench/${encodeURIComponent(id)}`);
  if (!found) throw misuse('no-such-item', { where: 'ITEM', detail: name });
  const photo = (hash: string) => photos.get(hash, 'view');
  const bytes = /\.html?$/i.test(file)
    ? new TextEncoder().encode(await parts.printer.reportPage(found, photo))
    : await parts.printer.reportSheet(found, photo);
  await write(session, file, bytes, `${found.title}, ${found.unit}`);
}

async function story(
  session: Session,
  name: string,
  file: string,
  { money = false, persons = false, words = false }: StoryOptions,
): Promise<void> {
  const { bench, photos, parts } = session;
  const found = bench.story(session.item(name).id, { money, persons, words });
  if (!found) throw misuse('no-such-item', { where: 'ITEM', detail: name });
  const page = await parts.printer.storyPage(found, (hash) => photos.get(hash, 'view'));
  await write(session, file, new TextEncoder().encode(page), found.title);
}

async function write({ parts, show }: Session, file: string, bytes: Uint8Array, title: string): Promise<void> {
  await parts.writeFile(file, bytes).catch(() => {
    throw new Stop(EXIT.store, problemFor('cannot-write', { where: 'FILE', detail: file }));
  });
  show({ file, bytes: bytes.length }, () => [`${title} is in ${file}.`]);
}
