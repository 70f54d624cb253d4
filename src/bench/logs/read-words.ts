import type { ClockNote, Column, LogGuess, LogRefusal, Role, SplitRows } from '../../core/rework/index.ts';

export const ROLE_NAMES: Readonly<Record<Role, string>> = { time: 'Time', volts: 'Voltage', amps: 'Current', celsius: 'Temperature' };

const DELIMITERS: Readonly<Record<string, string>> = { ';': 'semicolons', '\t': 'tabs', ',': 'commas', '|': 'bars', ' ': 'spaces' };
const FROM: Readonly<Record<Column['from'], string>> = {
  header: 'by its name',
  content: 'by its numbers alone: check it',
  person: 'as you said',
};

/** How a log was read, sentence by sentence, so that it can be put right. */
export function guessWords(guess: LogGuess): string[] {
  const left = guess.leftOut === 0 ? 'no row left out' : `${guess.leftOut} row${guess.leftOut === 1 ? '' : 's'} left out as unreadable`;
  return [
    `Cells are parted by ${DELIMITERS[guess.delimiter] ?? guess.delimiter}, decimals by a ${guess.decimal === ',' ? 'comma' : 'point'}; ${guess.headerRows === 1 ? 'one row' : `${guess.headerRows} rows`} before the numbers, ${left}.`,
    ...guess.columns.map(
      ({ role, index, name, unit, from }) =>
        `${ROLE_NAMES[role]}: column ${index + 1}${name === '' ? '' : ` "${name}"`}, read as ${unit}, ${FROM[from]}.`,
    ),
  ];
}

/** Names and first rows of a table as it was taken apart. */
export function previewOf(
  text: string,
  guess: LogGuess,
  split: SplitRows,
  rows = 3,
): { readonly names: readonly string[]; readonly rows: readonly (readonly string[])[] } {
  const all = split(
    text
      .slice(0, 20_000)
      .replace(/^\uFEFF/, '')
      .replace(/\r\n?/g, '\n'),
    guess.delimiter,
  )
    .map((row) => (guess.delimiter === ' ' ? row.filter((cell) => cell !== '') : row))
    .filter((row) => row.some((cell) => cell.trim() !== ''));
  const shown = all.slice(guess.headerRows, guess.headerRows + rows);
  const header = all[guess.headerRows - 1] ?? [];
  const width = Math.max(0, ...shown.map((row) => row.length));
  const names = Array.from({ length: width }, (_, i) => (header.length === width ? header[i]!.trim() : '') || `column ${i + 1}`);
  return { names, rows: shown };
}

const REFUSALS: Readonly<Record<LogRefusal, string>> = {
  'not-a-table': 'This is no table of numbers. Export the log as CSV, with the time and each value in a column of its own.',
  'comma-is-both':
    'Commas stand between the cells and inside the numbers, so it can be cut in more than one way. Export it with semicolons, or with decimal points.',
  'column-unclear': 'It is not clear which column is which. Say it below.',
  'too-short': 'There are too few rows to judge. At least ten are needed.',
  'too-many-unreadable': 'More than a fifth of the rows cannot be read. Look at the file, and at the columns below.',
  'no-time': 'The times never go on. Say below which column is the time.',
  'columns-look-swapped': 'By their numbers, voltage and current stand the wrong way round. Say below which is which.',
};

/** Why a log was not read, and what to do. */
export const readRefusalWords = (code: LogRefusal, detail: string): string => `${REFUSALS[code]} (${detail}.)`;

const span = (seconds: number): string => {
  const s = Math.abs(seconds);
  if (s < 120) return `${Math.round(s)} s`;
  return s < 7200 ? `${Math.round(s / 60)} min` : `${(s / 3600).toFixed(1)} h`;
};

/** What was odd about the clock of a log. */
export function clockWords({ kind, row, stepS }: ClockNote): string {
  const at = `At row ${row + 1} of the numbers`;
  switch (kind) {
    case 'gap':
      return `${at} ${span(stepS)} are missing. What flowed meanwhile is reckoned straight from edge to edge.`;
    case 'midnight':
      return `${at} the clock went past midnight; a day was added.`;
    case 'reset':
      return `${at} the clock began anew; time goes on with the usual step.`;
    case 'set-back':
      return `${at} the clock was set back by ${span(stepS)}; time goes on with the usual step.`;
    case 'set-forward':
      return `${at} the clock was set forward by ${span(stepS)} while nothing else changed; the leap is not counted.`;
  }
}
