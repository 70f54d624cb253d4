/** A list or a word of an S-expression, with where it starts. */
export type Node = Word | List;
export interface Word {
  readonly text: string;
  readonly quoted: boolean;
  readonly at: number;
}
export interface List {
  readonly items: readonly Node[];
  readonly at: number;
}

export interface TextProblem {
  readonly ok: false;
  readonly code: 'bad-text';
  /** From 1. */
  readonly line: number;
  readonly column: number;
  readonly message: string;
}

export const isList = (node: Node | undefined): node is List => node !== undefined && 'items' in node;

/** Line and column, from 1, of a place in a text. */
export function placeIn(text: string, at: number): { readonly line: number; readonly column: number } {
  const before = text.slice(0, at).split('\n');
  return { line: before.length, column: before.at(-1)!.length + 1 };
}

export const problemAt = (text: string, at: number, message: string): TextProblem => ({
  ok: false,
  code: 'bad-text',
  ...placeIn(text, at),
  message,
});

const TOKEN = /\s+|[()]|"(?:[^"\\]|\\[\s\S])*"|[^\s()"]+|"/y;
const DEEPEST = 200;

/** The one list that a text holds. Words may be bare or in quotes with `\` before a quote or another `\`. */
export function readList(text: string): { readonly ok: true; readonly list: List } | TextProblem {
  const open: { items: Node[]; at: number }[] = [];
  let whole: List | undefined;
  TOKEN.lastIndex = 0;
  for (let at = 0; at < text.length; at = TOKEN.lastIndex) {
    const token = TOKEN.exec(text)![0];
    if (token.trim() === '' || (at === 0 && token === '\uFEFF')) continue;
    if (whole) return problemAt(text, at, 'there is more after the end of the pattern');
    if (token === '"') return problemAt(text, at, 'a quote is opened and never closed');
    if (token === '(') {
      if (open.length >= DEEPEST) return problemAt(text, at, `brackets lie more than ${DEEPEST} deep`);
      open.push({ items: [], at });
    } else if (token === ')') {
      const list = open.pop();
      if (!list) return problemAt(text, at, 'a bracket is closed that was never opened');
      if (open.length === 0) whole = list;
      else open.at(-1)!.items.push(list);
    } else if (open.length === 0) return problemAt(text, at, `"${token.slice(0, 20)}" stands outside all brackets`);
    else open.at(-1)!.items.push(wordOf(token, at));
  }
  if (open.length > 0) return problemAt(text, open.at(-1)!.at, 'a bracket is opened and never closed');
  return whole ? { ok: true, list: whole } : problemAt(text, 0, 'there is no pattern in it');
}

const wordOf = (token: string, at: number): Word =>
  token.startsWith('"') ? { text: token.slice(1, -1).replace(/\\([\s\S])/g, '$1'), quoted: true, at } : { text: token, quoted: false, at };
