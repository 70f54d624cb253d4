import { Command, CommanderError } from 'commander';
import { problemFor, problemOfStore } from '../../bench/words.ts';
import { addCommands } from './add/index.ts';
import type { CliParts } from './cli-parts.ts';
import { askCommands } from './commands/ask.ts';
import { backupCommands } from './commands/backup.ts';
import { calculatorCommands } from './commands/calculators.ts';
import { circuitCommand } from './commands/circuits.ts';
import { compareCommand } from './commands/compare.ts';
import { benchCommands } from './commands/bench.ts';
import { differencesCommand } from './commands/differences.ts';
import { fitCommand } from './commands/fit.ts';
import { labelsCommand } from './commands/labels.ts';
import { listCommands } from './commands/list.ts';
import { modelCommands } from './commands/model.ts';
import { modelShareCommands } from './commands/model-share.ts';
import { moveCommand } from './commands/move.ts';
import { modelCheckCommands } from './commands/model-check.ts';
import { openingCommands } from './commands/opening.ts';
import { referenceCommand } from './commands/reference.ts';
import { recipeCommand } from './commands/recipes.ts';
import { logCommands } from './commands/logs.ts';
import { reportCommands } from './commands/report.ts';
import { shareCommands } from './commands/share.ts';
import { scoutCommand } from './commands/scout.ts';
import { undoCommand } from './commands/undo.ts';
import { EXIT, Stop, type ExitCode } from './stop.ts';

const LESSON = `
A first unit, from the listing to the first advice:
  salvor init --currency GBP
  salvor models                                    what devices are known
  salvor add lot --title "Two dead players" --seller "Harbour Clearance" --price 24 \\
      --items "Blue player:MODEL:20; Grey player:MODEL:10"
  salvor add receive 1
  salvor add trial 1 FUNCTION fails                functions stand in: salvor models MODEL
  salvor next 1                                    what to look at, try or measure now, and why

ITEM is an id or a stock number, such as 7. Money is written as 12 or 12.50.
Exit codes: 0 done, 1 refused by a rule of the job, 2 wrong usage or input, 3 trouble with the bench's folder or database.`;

/** Runs one command line; what comes out is its exit code. Never throws. */
export async function runCli(argv: readonly string[], parts: CliParts): Promise<ExitCode> {
  const program = new Command('salvor');
  program
    .description('The bench book of a person who makes working devices out of broken ones.')
    .version(parts.version)
    .option('--home <dir>', 'folder of the bench; else SALVOR_HOME, else ./bench-data')
    .option('--json', 'answer with the objects of the open interface')
    .addHelpText('after', LESSON)
    .showHelpAfterError('(add --help for how it is written, with examples)')
    .configureOutput({ writeOut: (text) => parts.out(text.trimEnd()), writeErr: (text) => parts.err(text.trimEnd()) })
    .exitOverride();
  for (const add of [
    benchCommands,
    backupCommands,
    moveCommand,
    listCommands,
    askCommands,
    circuitCommand,
    modelCheckCommands,
    scoutCommand,
    compareCommand,
    fitCommand,
    differencesCommand,
    referenceCommand,
    labelsCommand,
    openingCommands,
    calculatorCommands,
    recipeCommand,
    logCommands,
    reportCommands,
    addCommands,
    shareCommands,
    modelCommands,
    modelShareCommands,
    undoCommand,
  ])
    add(program, parts);
  try {
    await program.parseAsync([...argv], { from: 'user' });
    return EXIT.done;
  } catch (error) {
    return end(error, Boolean(program.opts().json), parts);
  }
}

function end(error: unknown, isJson: boolean, parts: CliParts): ExitCode {
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.done : EXIT.usage;
  const stop = error instanceof Stop ? error : undefined;
  const trouble = problemOfStore(error);
  const problem = stop?.problem ?? trouble ?? problemFor('unexpected');
  parts.err(isJson ? JSON.stringify(problem, null, 2) : problem.message);
  if (!stop && !trouble) parts.err(error instanceof Error ? (error.stack ?? error.message) : String(error));
  return stop?.exitCode ?? EXIT.store;
}
