import type { Command } from 'commander';
import { Status } from '../../../bench/views/index.ts';
import type { ItemQuery } from '../../../bench/ports.ts';
import type { CliParts } from '../cli-parts.ts';
import { circuitsAtHand } from '../circuits-at-hand.ts';
import { moneyText } from '../money.ts';
import { itemLines } from '../print/item-lines.ts';
import { table } from '../print/table.ts';
import { withSession, type Session } from '../session.ts';
import { misuse } from '../stop.ts';

interface ListOptions {
  readonly status?: string;
  readonly kind?: string;
  readonly model?: string;
  readonly limit: string;
  readonly after?: string;
}

/** Finding things. */
export function listCommands(program: Command, parts: CliParts): void {
  program
    .command('list')
    .argument('[words...]', 'each must begin a word of the name, number, model, lot or seller')
    .description('lists items, newest change first')
    .option('--status <status>', `one or more of ${Status.options.join(', ')}, with commas between`)
    .option('--kind <kind>', 'unit or assembly')
    .option('--model <id>', 'only of this model')
    .option('--limit <count>', 'at most so many', '50')
    .option('--after <mark>', 'continue: the mark that the list before ended with')
    .addHelpText('after', '\nExample: salvor list blue --status bought,on-the-bench')
    .action((words: string[], options: ListOptions, command: Command) =>
      withSession(command, parts, (session) => list(session, words, options)),
    );
  program
    .command('show')
    .argument('<item>', 'id or stock number')
    .description('shows one item: its log, what is believed, what next')
    .addHelpText('after', '\nExample: salvor show 7')
    .action((name: string, _options: unknown, command: Command) =>
      withSession(command, parts, async (session) => {
        await circuitsAtHand(session, session.item(name).modelId);
        const file = session.bench.item(session.item(name).id)!;
        session.show(file, () => itemLines(file));
      }),
    );
}

function list(session: Session, words: readonly string[], options: ListOptions): void {
  const { currency } = session.bench.overview();
  const page = session.bench.items(queryOf(words, options));
  session.show({ rows: page.rows, next: page.next }, () => [
    ...table(
      ['no', 'name', 'model', 'status', 'cost', 'id'],
      page.rows.map((row) => [`${row.number}`, row.name, row.model_id, row.status, moneyText(row.cost_minor, currency), row.id]),
      [0, 4],
    ),
    ...(page.rows.length === 0 ? ['Nothing fits. salvor add lot --help shows how to note what was bought.'] : []),
    ...(page.next ? [`More: --after '${page.next}'`] : []),
  ]);
}

function queryOf(words: readonly string[], { status, kind, model, limit, after }: ListOptions): ItemQuery {
  const statuses = status?.split(',');
  const unknown = statuses?.find((each) => !Status.safeParse(each).success);
  if (unknown !== undefined)
    throw misuse('bad-usage', { where: '--status', detail: `"${unknown}" is not a status; they are ${Status.options.join(', ')}` });
  if (!/^\d{1,4}$/.test(limit) || Number(limit) < 1)
    throw misuse('bad-usage', { where: '--limit', detail: `--limit takes a number from 1 to 9999, not "${limit}"` });
  return {
    limit: Number(limit),
    ...(words.length > 0 ? { search: words.join(' ') } : {}),
    ...(statuses ? { status: statuses } : {}),
    ...(kind ? { kind } : {}),
    ...(model ? { model } : {}),
    ...(after ? { after } : {}),
  };
}
