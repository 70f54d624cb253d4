import { basename } from 'node:path';
import type { Command } from 'commander';
import { assertFit, drawFit, rankFits, type FitAnswer, type Pattern } from '../../../core/fit/index.ts';
import { askSentence, fitSentence, readPatternFile, reasonSentence } from '../../../bench/fit/index.ts';
import type { CliParts } from '../cli-parts.ts';
import { csvLines } from '../csv-lines.ts';
import { table } from '../print/table.ts';
import { misuse } from '../stop.ts';

/** Does it fit. */
export function fitCommand(program: Command, parts: CliParts): void {
  program
    .command('fit')
    .argument('<place>', 'pads of the place on the board: a .kicad_mod file or a table (CSV)')
    .argument('<parts...>', 'patterns of the parts that may go there')
    .description('lays parts over a place of a board: which fits, which not and why, and what to measure first')
    .option('--picture <file>', 'writes an SVG of the best of them over the pads')
    .addHelpText('after', '\nExample: salvor fit board-j4.kicad_mod socket-a.kicad_mod socket-b.kicad_mod --picture fit.svg')
    .action(async (place: string, files: string[], options: { readonly picture?: string }, command: Command) => {
      const under = await patternOf(parts, place);
      const over = await Promise.all(files.map(async (file) => ({ file, pattern: await patternOf(parts, file) })));
      const { fits } = rankFits(under, over);
      for (const { part, fit } of fits) assertFit(part.pattern, under, fit);
      const best = fits[0]!;
      if (options.picture !== undefined) {
        const label = `${best.part.pattern.name} over ${under.name}: ${fitSentence(best.fit)}`;
        await write(parts, options.picture, drawFit(best.part.pattern, under, best.fit, label));
      }
      const isJson = Boolean(command.optsWithGlobals().json);
      if (isJson) parts.out(JSON.stringify({ fits: fits.map(({ part, fit }) => ({ file: part.file, ...fit })) }, null, 2));
      else parts.out(fits.flatMap(({ part, fit }, i) => [`${part.file}: ${fitSentence(fit)}`, ...lines(fit, i === 0)]).join('\n'));
    });
}

async function patternOf(parts: CliParts, file: string): Promise<Pattern> {
  const bytes = await parts.readFile(file).catch(() => {
    throw misuse('no-such-file', { detail: file });
  });
  const read = readPatternFile(basename(file), new TextDecoder().decode(bytes), csvLines);
  if (!read.ok) throw misuse('bad-pattern', { where: file, detail: read.detail });
  return read.pattern;
}

async function write(parts: CliParts, file: string, text: string): Promise<void> {
  await parts.writeFile(file, new TextEncoder().encode(text)).catch(() => {
    throw misuse('cannot-write', { detail: file });
  });
}

const hundredths = (mm: number): string => mm.toFixed(2);

function lines(fit: FitAnswer, isBest: boolean): string[] {
  const said = [...fit.reasons.map(reasonSentence), ...fit.asks.map(askSentence)].map((sentence) => `  ${sentence}`);
  if (!isBest || fit.pads.length === 0) return said;
  const { turnDeg, dxMm, dyMm } = fit.placing;
  const rows = fit.pads.map(({ pins, onto, overlap, offMm, room, level }) => [
    pins.join('/'),
    onto.join('/'),
    `${Math.round(100 * overlap)} %`,
    hundredths(Math.hypot(...offMm)),
    ...(room ? [room.toeMm, room.heelMm, room.sideMm].map(hundredths) : ['', '', '']),
    level ?? '',
  ]);
  return [
    ...said,
    `  Turned by ${Math.round(turnDeg * 10) / 10}°, moved by ${hundredths(dxMm)}, ${hundredths(dyMm)} mm; found by its ${fit.alignedOn}.`,
    ...table(['pin', 'pad', 'covered', 'off mm', 'toe', 'heel', 'side', 'level'], rows, [2, 3, 4, 5, 6]).map((line) => `  ${line}`),
  ];
}
