import type { Command } from 'commander';
import { screwMat } from '../../../bench/hands/index.ts';
import type { CliParts } from '../cli-parts.ts';
import { openingLines } from '../print/opening-lines.ts';
import { withSession, type Session } from '../session.ts';
import { misuse } from '../stop.ts';

/** Into a device and out of it. */
export function openingCommands(program: Command, parts: CliParts): void {
  program
    .command('open')
    .argument('<item>', 'id or stock number')
    .argument('[goal]', 'what to get at: stage:open, slot:display, block:keys, remedy:clean-keys, part:U7; stage:closed closes it')
    .description('says how to open an item, step by step, and how to close it again')
    .addHelpText('after', '\nExample: salvor open 7 slot:display')
    .action((name: string, goal: string | undefined, _options: unknown, command: Command) =>
      withSession(command, parts, (session) => opening(session, name, goal)),
    );
  program
    .command('mat')
    .argument('<model>', 'name of the model')
    .description('writes the mat for the fasteners of a model at true scale, as PDF')
    .requiredOption('--out <file>', 'the file to write')
    .option('--paper <paper>', 'A4 or Letter', 'A4')
    .addHelpText('after', '\nExample: salvor mat tern-tn10 --paper Letter --out mat.pdf\nPrint it at 100 %, and check it by its rulers.')
    .action((model: string, options: MatOptions, command: Command) =>
      withSession(command, parts, (session) => mat(session, model, options)),
    );
}

interface MatOptions {
  readonly out: string;
  readonly paper: string;
}

function opening(session: Session, name: string, goal: string | undefined): void {
  const view = session.bench.opening(session.item(name).id, goal ?? null);
  if (!view) throw misuse('no-such-model', { where: 'ITEM', detail: session.item(name).modelId });
  session.show(view, () => openingLines(view));
}

async function mat({ bench, parts, show }: Session, id: string, { paper, out }: MatOptions): Promise<void> {
  const model = bench.model(id);
  if (!model) throw misuse('no-such-model', { where: 'MODEL', detail: id });
  if (paper !== 'A4' && paper !== 'Letter')
    throw misuse('bad-usage', { where: '--paper', detail: `--paper takes A4 or Letter, not "${paper}"` });
  const laid = screwMat(model.file, paper);
  if (!laid.ok) throw misuse('panel-too-large', { where: paper, detail: laid.panel });
  const pdf = await parts.printer.mat(laid);
  await parts.writeFile(out, pdf).catch(() => {
    throw misuse('cannot-write', { detail: out });
  });
  const pages = laid.pages.length;
  show({ file: out, paper, pages }, () => [
    `Wrote ${out}: ${pages} page${pages === 1 ? '' : 's'} of ${paper}. Print at 100 %, and check it by its rulers.`,
  ]);
}
