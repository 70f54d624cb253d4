/** One command of a page, and what the page shows of its output. */
export interface Command {
  /** In the page, from 1. */
  readonly line: number;
  /** As the shell takes it. */
  readonly text: string;
  readonly shown: readonly string[];
  /** Numbers may differ from those shown: they follow the rates of the models, which move. */
  readonly about: boolean;
  readonly exitCode: number;
}

const BLOCK = /^```console example( about)?\n([\s\S]*?)^```$/gm;
const EXIT = /^# exit code (\d)$/;

/**
 * The commands in the blocks of a page that are marked `console example`, in order. A command stands behind `$ `, goes on
 * where a line ends with a backslash, and what follows is its output on both streams; a line `# exit code N` at the end
 * says that it fails. In a block marked `console example about` numbers are not compared.
 */
export function commandsOf(page: string): Command[] {
  return [...page.matchAll(BLOCK)].flatMap((block) => {
    const first = page.slice(0, block.index).split('\n').length + 1;
    return commandsIn(block[2]!.trimEnd().split('\n'), first, block[1] !== undefined);
  });
}

function commandsIn(lines: readonly string[], first: number, about: boolean): Command[] {
  const starts = lines.flatMap((line, i) => (line.startsWith('$ ') ? [i] : []));
  if (starts[0] !== 0) throw new Error(`the block at line ${first} does not begin with a command`);
  return starts.map((start, i) => {
    const own = lines.slice(start, starts[i + 1]);
    const last = own.findIndex((line) => !line.endsWith('\\'));
    const shown = own.slice(last + 1);
    const code = EXIT.exec(shown.at(-1) ?? '')?.[1];
    return {
      line: first + start,
      text: own
        .slice(0, last + 1)
        .join('\n')
        .slice(2),
      shown: code === undefined ? shown : shown.slice(0, -1),
      about,
      exitCode: Number(code ?? 0),
    };
  });
}

/**
 * Whether an output is what a page shows. `…` in a line stands for anything, as a line of its own for any number of
 * lines. With `about`, any number stands for any other, and columns may be wider or narrower.
 */
export function isShown(shown: readonly string[], output: string, about: boolean): boolean {
  const lines = shown.map((line) => (line.trim() === '…' ? '(?:.*\\n)*?' : `${lineLike(line, about)}\\n`));
  return new RegExp(`^${lines.join('')}$`, 'u').test(output === '' ? '' : `${output}\n`);
}

function lineLike(line: string, about: boolean): string {
  const escaped = line.replaceAll(/[\\^$.*+?()[\]{}|/]/g, '\\$&').replaceAll('…', '.*');
  if (!about) return escaped;
  return escaped
    .replaceAll(/(?:under |over |[<>])?-?\d+(?:\\\.\d+)?/g, '(?:under |over |[<>])?-?\\d+(?:\\.\\d+)?')
    .replaceAll(/ +/g, ' +')
    .replace(/^ \+/, ' *');
}
