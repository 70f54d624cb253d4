import type { Command } from 'commander';
import type { CliParts } from '../cli-parts.ts';
import { adviceLines } from '../print/advice-lines.ts';
import { booksLines } from '../print/books-lines.ts';
import { calibrationLines } from '../print/calibration-lines.ts';
import { drawerLines } from '../print/drawer-lines.ts';
import { beliefLines, proofLines } from '../print/item-lines.ts';
import { learnedLines } from '../print/learned-lines.ts';
import { listingLines } from '../print/listing-lines.ts';
import { modelLines, modelListLines } from '../print/model-lines.ts';
import { pileLines } from '../print/pile-lines.ts';
import { planLines } from '../print/plan-lines.ts';
import { circuitsAtHand } from '../circuits-at-hand.ts';
import { withSession, type Session } from '../session.ts';
import { misuse } from '../stop.ts';

/** Asking the bench: what next, and how things stand. */
export function askCommands(program: Command, parts: CliParts): void {
  const simple = (name: string, description: string, answer: (session: Session) => void | Promise<void>): void => {
    program
      .command(name)
      .description(description)
      .action((_options: unknown, command: Command) => withSession(command, parts, answer));
  };
  program
    .command('next')
    .argument('<item>', 'id or stock number')
    .description('says what to do next with an item, and why')
    .addHelpText('after', '\nExample: salvor next 7')
    .action((name: string, _options: unknown, command: Command) => withSession(command, parts, (session) => next(session, name)));
  program
    .command('plan')
    .description('says what to do with the whole pile: units, drawer and orders decided together')
    .option('--why', 'with the reasons of each thing')
    .option('--each', 'the advice on each unit alone instead, best first; quick')
    .addHelpText('after', '\nExample: salvor plan --why')
    .action((options: PlanOptions, command: Command) => withSession(command, parts, (session) => plan(session, options)));
  simple('drawer', 'shows loose assemblies, bags of parts, and orders', ({ bench, show }) => {
    const drawer = bench.drawer();
    show(drawer, () => drawerLines(drawer));
  });
  simple('books', 'shows the money of each unit and each month', ({ bench, show }) => {
    const books = bench.books();
    show(books, () => booksLines(books));
  });
  simple('learned', 'shows what was learned: before, now, and from how many jobs', ({ bench, show }) => {
    const learned = bench.learned();
    show(learned, () => learnedLines(learned));
  });
  simple('judged', 'holds what was advised against what came of it', ({ bench, show }) => {
    const calibration = bench.calibration();
    show(calibration, () => calibrationLines(calibration));
  });
  program
    .command('listing')
    .argument('<unit>', 'id or stock number')
    .description('writes the text of a listing from what is on file')
    .addHelpText('after', '\nExample: salvor listing 7')
    .action((name: string, _options: unknown, command: Command) => withSession(command, parts, (session) => listing(session, name)));
  program
    .command('models')
    .argument('[id]', 'one model: its functions, places, points, accessories, remedies, slots and parts by name')
    .description('lists the models, or shows the names that one model uses')
    .addHelpText('after', '\nExample: salvor models tern-tn10')
    .action((id: string | undefined, _options: unknown, command: Command) => withSession(command, parts, (session) => models(session, id)));
}

interface PlanOptions {
  readonly why?: boolean;
  readonly each?: boolean;
}

async function plan(session: Session, { why = false, each = false }: PlanOptions): Promise<void> {
  const { bench, show } = session;
  await circuitsAtHand(session);
  if (each) {
    const pile = bench.pile();
    return show(pile, () => pileLines(pile));
  }
  const view = await bench.planSettled();
  show(view, () => planLines(view, why));
}

async function next(session: Session, name: string): Promise<void> {
  await circuitsAtHand(session, session.item(name).modelId);
  const file = session.bench.item(session.item(name).id)!;
  session.show(file.advice, () => [
    ...adviceLines(file.advice, file.money.currency),
    '',
    ...(file.advice.do === 'prove' ? [...proofLines(file.proof), ''] : []),
    ...beliefLines(file.belief),
  ]);
}

function listing({ bench, item, show }: Session, name: string): void {
  const view = bench.listingText(item(name).id);
  if (!view) throw misuse('no-such-item', { where: 'UNIT', detail: name });
  show(view, () => listingLines(view));
}

function models({ bench, show }: Session, id: string | undefined): void {
  if (id === undefined) return show({ models: bench.models() }, () => modelListLines(bench.models()));
  const model = bench.model(id);
  if (!model) throw misuse('no-such-model', { where: 'ID', detail: id });
  show({ file: model.file, readings: model.readings }, () => modelLines(model));
}
