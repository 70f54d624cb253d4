import type { Command } from 'commander';
import { LABEL_SHEETS, labelsOf, layoutLabels, sheetOf, type WantedNames } from '../../../bench/labels/index.ts';
import type { CliParts } from '../cli-parts.ts';
import { writeOut } from '../pattern-file.ts';
import { withSession, type Session } from '../session.ts';
import { misuse } from '../stop.ts';

interface LabelOptions {
  readonly bags?: string;
  readonly sheet: string;
  readonly skip: string;
  readonly address: string;
  readonly out: string;
}

const SHEETS = LABEL_SHEETS.map(({ id, widthMm, heightMm }) => `${id} (${widthMm} × ${heightMm} mm)`).join(', ');

/** Labels for paper. */
export function labelsCommand(program: Command, parts: CliParts): void {
  program
    .command('labels')
    .argument('[items...]', 'ids or stock numbers; all: everything at hand')
    .description('writes labels for units and bags as a PDF: print it unscaled, and what is scanned opens in the browser')
    .option('--bags <bags>', 'ids of bags with commas between; all: every bag that holds something')
    .option('--sheet <sheet>', SHEETS, LABEL_SHEETS[0]!.id)
    .option('--skip <count>', 'so many labels of the first sheet are used already', '0')
    .option('--address <url>', 'where the bench is opened by who scans', 'http://127.0.0.1:4780')
    .option('--out <file>', 'file to write', 'labels.pdf')
    .addHelpText('after', '\nExample: salvor labels 7 --bags all --sheet a4-21')
    .action((items: string[], options: LabelOptions, command: Command) =>
      withSession(command, parts, (session) => print(session, items, options)),
    );
}

async function print(session: Session, items: readonly string[], options: LabelOptions): Promise<void> {
  const { bench, parts } = session;
  const sheet = sheetOf(options.sheet);
  if (!sheet) throw misuse('bad-usage', { where: '--sheet', detail: `"${options.sheet}" is no sheet; they are ${SHEETS}` });
  if (!/^\d{1,3}$/.test(options.skip))
    throw misuse('bad-usage', { where: '--skip', detail: `--skip takes a number, not "${options.skip}"` });
  if (!/^https?:\/\/\S+$/.test(options.address))
    throw misuse('bad-usage', { where: '--address', detail: `"${options.address}" is no address such as http://127.0.0.1:4780` });
  const wanted = { items: namesIn(items), bags: namesIn(options.bags?.split(',') ?? []), address: options.address.replace(/\/+$/, '') };
  if (wanted.items.length + wanted.bags.length === 0)
    throw misuse('bad-usage', { where: 'ITEM', detail: 'Name some items, or bags with --bags' });
  const made = labelsOf(bench.state(), bench.model, wanted);
  if (!made.ok) throw misuse(made.code, { where: made.code === 'no-such-bag' ? '--bags' : 'ITEM', detail: made.name });
  const layout = layoutLabels(made.labels, sheet, Number(options.skip));
  await writeOut(parts, options.out, await parts.printer.labels(layout));
  const told = { file: options.out, labels: made.labels.length, pages: layout.pages.length };
  session.show(told, () => [
    `${counted(told.labels, 'label')} on ${counted(told.pages, 'page')} of ${sheet.paper}: ${told.file}. Print it unscaled, at 100 %.`,
  ]);
}

const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

const namesIn = (names: readonly string[]): WantedNames =>
  names.length === 1 && names[0] === 'all' ? 'all' : names.filter((name) => name.trim() !== '');
