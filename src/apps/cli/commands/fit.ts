import type { Command } from 'commander';
import { answerFit, recordOf, withTold } from '../../../bench/fit/index.ts';
import type { BenchState } from '../../../bench/state.ts';
import type { FitQuestion } from '../../../bench/views/index.ts';
import type { CliParts } from '../cli-parts.ts';
import { csvLines } from '../csv-lines.ts';
import { patternFile, writeOut } from '../pattern-file.ts';
import { fitLines } from '../print/fit-lines.ts';
import { readText } from '../read-input.ts';
import { withSession } from '../session.ts';
import { misuse } from '../stop.ts';
import { toldText } from '../told-text.ts';

interface FitOptions {
  readonly drawer?: boolean;
  readonly list?: string;
  readonly place?: string;
  readonly part?: string;
  readonly picture?: string;
}

const TOLD = 'height=MM,mouth=DEGREES,reach=MM,contacts=top|bottom|both,kind=KIND';

/** Does it fit. */
export function fitCommand(program: Command, parts: CliParts): void {
  program
    .command('fit')
    .argument('<place>', 'pads of the place on the board: a .kicad_mod file or a table (CSV)')
    .argument('[parts...]', 'patterns of the parts that may go there')
    .description('lays parts over a place of a board: which fits, which not and why, and what to measure first')
    .option('--drawer', 'also every bag of the drawer that has terminals on file')
    .option('--list <file>', 'also every part of a supplier’s list (CSV): a line a part from drawings, or a line a pad')
    .option('--place <told>', `what pads do not say of the place: ${TOLD}`)
    .option('--part <told>', 'the same of the parts that are given as files')
    .option('--picture <file>', 'writes an SVG of the best of them over the pads')
    .addHelpText('after', '\nExample: salvor fit board-j4.kicad_mod socket-a.kicad_mod socket-b.kicad_mod --picture fit.svg')
    .action((place: string, files: string[], options: FitOptions, command: Command) => fit(parts, place, files, options, command));
}

async function fit(parts: CliParts, place: string, files: readonly string[], options: FitOptions, command: Command): Promise<void> {
  if (files.length === 0 && !options.drawer && options.list === undefined)
    throw misuse('bad-usage', { where: 'parts', detail: 'Name the files of some parts, or ask with --drawer or --list' });
  const question = await questionOf(parts, place, files, options);
  const answer = async (bags: BenchState['bags']): Promise<void> => {
    const view = answerFit(question, { bags, linesOf: csvLines });
    const best = view.fits[0];
    if (options.picture !== undefined && best) await writeOut(parts, options.picture, new TextEncoder().encode(best.picture));
    parts.out(command.optsWithGlobals().json ? JSON.stringify(view, null, 2) : fitLines(view).join('\n'));
  };
  return options.drawer ? withSession(command, parts, ({ bench }) => answer(bench.state().bags)) : answer(new Map());
}

async function questionOf(parts: CliParts, place: string, files: readonly string[], options: FitOptions): Promise<FitQuestion> {
  const [ofPlace, ofPart] = [toldText(options.place, '--place'), toldText(options.part, '--part')];
  const under = withTold(await patternFile(parts, place), ofPlace);
  const over = await Promise.all(files.map(async (file) => recordOf({ ...withTold(await patternFile(parts, file), ofPart), name: file })));
  const list = options.list === undefined ? '' : await readText(parts, options.list);
  return { place: recordOf(under), parts: over, drawer: options.drawer ?? false, list };
}
