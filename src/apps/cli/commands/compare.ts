import { readText } from '../read-input.ts';
import type { Command } from 'commander';
import { comparedCsv, listingsFromCsv, listingToCompare } from '../../../bench/scout/index.ts';
import { CompareQuestion, type CompareView } from '../../../bench/views/index.ts';
import type { CliParts } from '../cli-parts.ts';
import { csvLines } from '../csv-lines.ts';
import { moneyText } from '../money.ts';
import { table } from '../print/table.ts';
import { withSession, type Session } from '../session.ts';
import { misuse } from '../stop.ts';
import { sound } from '../sound.ts';

interface CompareOptions {
  readonly model?: string;
  readonly csv?: string;
}

/** Many listings at once. */
export function compareCommand(program: Command, parts: CliParts): void {
  program
    .command('compare')
    .argument('<file>', 'listings as CSV; the columns title and price are needed')
    .description('ranks listings by profit per hour at the asking price, each against the pile as it is planned; stores nothing')
    .option('--model <id>', 'what they are where a line does not say it')
    .option('--csv <file>', 'writes the table into a file')
    .addHelpText('after', '\nExample: salvor compare listings.csv --model tern-tn20 --csv ranked.csv')
    .action((file: string, options: CompareOptions, command: Command) =>
      withSession(command, parts, (session) => compare(session, file, options)),
    );
}

async function compare(session: Session, file: string, { model = '', csv }: CompareOptions): Promise<void> {
  const { bench, parts, show } = session;
  const text = await readText(parts, file);
  const { currency } = bench.overview();
  const { listings, problems } = listingsFromCsv(csvLines(text), currency);
  const [problem] = problems;
  if (problem)
    throw misuse('bad-table', { where: file, detail: `line ${problem.line}, ${problem.field} ${problem.message}. ${problem.next}` });
  const question = CompareQuestion.safeParse({ listings: listings.map((line) => listingToCompare(line, model)) });
  if (!question.success)
    throw misuse('bad-input', { where: question.error.issues[0]!.path.join('.'), detail: question.error.issues[0]!.message });
  const compared = await bench.compare(question.data);
  if (compared === null) throw misuse('no-plans');
  const view = sound(compared);
  if (csv !== undefined) await write(parts, csv, comparedCsv(view.listings, currency));
  show(view, () => comparedLines(view));
}

async function write(parts: CliParts, file: string, text: string): Promise<void> {
  await parts.writeFile(file, new TextEncoder().encode(text)).catch(() => {
    throw misuse('cannot-write', { where: 'FILE', detail: file });
  });
}

function comparedLines({ listings, why, currency }: CompareView): string[] {
  const money = (minor: number | null): string => (minor === null ? '' : moneyText(minor, currency));
  const rows = listings.map((each, i) => [
    `${i + 1}`,
    each.title,
    `${each.count}`,
    money(each.asks_minor),
    money(each.worth_minor),
    money(each.profit_minor),
    money(each.per_hour_minor),
    `${each.minutes}`,
    each.claims.join(', '),
  ]);
  return [...table(['no', 'title', 'units', 'asks', 'worth', 'profit', 'an hour', 'min', 'read'], rows, [0, 2, 3, 4, 5, 6, 7]), ...why];
}
