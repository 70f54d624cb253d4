import type { Command } from 'commander';
import { takeBundle } from '../../../bench/take-bundle.ts';
import { wholeLog } from '../../../bench/whole-log.ts';
import { problemFor, problemOfTaking } from '../../../bench/words.ts';
import { numberIn } from '../add/add-command.ts';
import type { CliParts } from '../cli-parts.ts';
import { moneyIn } from '../money.ts';
import { counted } from '../print/counted.ts';
import { homeOf, withSession, type Session } from '../session.ts';
import { MOST_BYTES, readInput } from '../read-input.ts';
import { EXIT, misuse, Stop } from '../stop.ts';

/** The bench as a whole: making it, serving it, and one file in and out. */
export function benchCommands(program: Command, parts: CliParts): void {
  program
    .command('init')
    .description('makes the folder of a bench, or changes the settings of one that is there')
    .option('--currency <code>', 'currency of the books, such as GBP; fixed by the first money that is noted')
    .option('--name <name>', 'name of the bench')
    .option('--hour-value <amount>', 'what an hour at the bench is worth to you')
    .option('--fee-percent <number>', 'usual selling fee, per cent of the price')
    .option('--postage-out <amount>', 'usual postage of a sold unit')
    .addHelpText('after', '\nExample: salvor init --home ./my-bench --currency EUR --hour-value 12')
    .action((options: InitOptions, command: Command) =>
      withSession(command, parts, (session) => init(session, options, homeOf(command, parts))),
    );
  program
    .command('serve')
    .description('serves the bench to the browser until it is stopped')
    .option('--port <number>', '4780 unless told')
    .option('--lan', 'let devices of this network in that have joined, over HTTPS')
    .option('--lan-port <number>', 'the port for them, 4781 unless told')
    .option('--database <url>', 'share the log with other servers in a PostgreSQL database')
    .option('--photos <bucket>', 'keep photos in a bucket that servers share, such as s3://workshop/photos')
    .option('--empty', 'start an empty bench without the demo')
    .option('--open', 'open the browser')
    .addHelpText('after', '\nExample: salvor serve --home ./my-bench --empty --open')
    .action((options: ServeOptions, command: Command) => serve(options, homeOf(command, parts), parts));
  program
    .command('export')
    .argument('<file>', 'name of the bundle')
    .description('writes the whole bench, events and photos, into one file')
    .addHelpText('after', '\nExample: salvor export bench.zip')
    .action((file: string, _options: unknown, command: Command) => withSession(command, parts, (session) => exportTo(session, file)));
  program
    .command('import')
    .argument('<file>', 'a bundle made by salvor export')
    .description('takes a bundle into an empty bench')
    .addHelpText('after', '\nExample: salvor import bench.zip --home ./fresh-bench')
    .action((file: string, _options: unknown, command: Command) => withSession(command, parts, (session) => importFrom(session, file)));
}

interface InitOptions {
  readonly currency?: string;
  readonly name?: string;
  readonly hourValue?: string;
  readonly feePercent?: string;
  readonly postageOut?: string;
}

function init(session: Session, options: InitOptions, home: string): void {
  const body = settingsIn(options, options.currency ?? session.bench.overview().currency);
  if (Object.keys(body).length > 0) session.note([{ kind: 'bench-set', body }]);
  const view = session.bench.overview();
  session.show(view, () => [
    `The bench "${view.name}" in ${home} holds ${counted(view.events, 'event')} and keeps its books in ${view.currency}.`,
    'Next: salvor add lot --help, or salvor serve to use it in the browser.',
  ]);
}

function settingsIn({ currency, name, hourValue, feePercent, postageOut }: InitOptions, inCurrency: string): Record<string, unknown> {
  return {
    ...(name ? { name } : {}),
    ...(currency ? { currency } : {}),
    ...(hourValue === undefined ? {} : { hour_value_minor: moneyIn(hourValue, inCurrency, '--hour-value') }),
    ...(feePercent === undefined ? {} : { fee_percent: numberIn({ 'fee-percent': feePercent }, 'fee-percent') }),
    ...(postageOut === undefined ? {} : { postage_out_minor: moneyIn(postageOut, inCurrency, '--postage-out') }),
  };
}

interface ServeOptions {
  readonly port?: string;
  readonly lan?: boolean;
  readonly lanPort?: string;
  readonly database?: string;
  readonly photos?: string;
  readonly empty?: boolean;
  readonly open?: boolean;
}

async function serve({ port, lan, lanPort, database, photos, empty, open }: ServeOptions, home: string, parts: CliParts): Promise<void> {
  const flags = [
    ...(port ? ['--port', port] : []),
    ...(lan ? ['--lan'] : []),
    ...(lanPort ? ['--lan-port', lanPort] : []),
    ...(database ? ['--database', database] : []),
    ...(photos ? ['--photos', photos] : []),
    ...(empty ? ['--empty'] : []),
    ...(open ? ['--open'] : []),
  ];
  const code = await parts.serve(['--home', home, ...flags]);
  if (code !== 0) throw new Stop(code === EXIT.usage ? EXIT.usage : EXIT.store, problemFor('server-ended', { detail: String(code) }));
}

async function exportTo(session: Session, file: string): Promise<void> {
  const events = wholeLog(session.bench);
  const bytes = await session.parts.bundle.write(events, session.photos);
  await session.parts.writeFile(file, bytes).catch(() => {
    throw new Stop(EXIT.store, problemFor('cannot-write', { where: 'FILE', detail: file }));
  });
  session.show({ file, events: events.length, bytes: bytes.length }, () => [
    `${counted(events.length, 'event')} and the photos of the bench are in ${file}.`,
  ]);
}

async function importFrom(session: Session, file: string): Promise<void> {
  const bytes = await readInput(session.parts, file, MOST_BYTES.bundle);
  const read = await session.parts.bundle.read(bytes);
  if (!read.ok) throw misuse('bad-bundle', { where: 'FILE', detail: read.detail });
  const taken = await takeBundle(session.bench, session.photos, read);
  if (!taken.ok) throw new Stop(taken.code === 'not-empty' ? EXIT.refused : EXIT.usage, problemOfTaking(taken, read.events.length));
  session.show({ events: taken.events, photos: taken.photos }, () => [
    `Came in: ${counted(taken.events, 'event')} and ${counted(taken.photos, 'photo')}.`,
    'Next: salvor plan',
  ]);
}
