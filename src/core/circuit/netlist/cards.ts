import { mistake, type Card, type Token } from './types.ts';

/** Longest text that is read, in characters: a board of ten thousand parts needs a tenth of it. */
export const MAX_NETLIST_CHARS = 4_000_000;

/**
 * The title (first line, by the rule of SPICE) and the cards of a netlist: comments dropped (`*` at the start of a line; `;` or `$ ` after
 * it), lines that start with `+` joined to the one before, and everything between `.control` and `.endc` left out.
 */
export function readCards(text: string): { title: string; cards: Card[] } {
  if (text.length > MAX_NETLIST_CHARS)
    throw mistake({ line: 1, column: 1 }, 'too-large', `the netlist is longer than ${MAX_NETLIST_CHARS} characters`);
  const lines = text.split(/\r\n|\r|\n/);
  const cards: Token[][] = [];
  let skipping = false;
  for (let i = 1; i < lines.length; i++) {
    const raw = lines[i]!;
    const start = raw.trimStart();
    if (/^\.control\b/i.test(start)) skipping = true;
    if (!skipping && start !== '' && !start.startsWith('*')) addLine(cards, raw, i + 1);
    if (/^\.endc\b/i.test(start)) skipping = false;
  }
  return { title: lines[0]!.trim(), cards: cards.map((tokens) => ({ tokens })) };
}

function addLine(cards: Token[][], raw: string, line: number): void {
  const plus = /^\s*\+/.exec(raw);
  const text = plus ? ' '.repeat(plus[0].length) + raw.slice(plus[0].length) : raw;
  const tokens = tokensOf(text, line);
  if (!plus) {
    if (tokens.length > 0) cards.push(tokens);
    return;
  }
  const last = cards.at(-1);
  if (!last)
    throw mistake({ line, column: plus[0].length }, 'syntax', 'a line that starts with "+" continues the one before, but there is none');
  last.push(...tokens);
}

/** `{…}` and `'…'` are one word each; `=` stands alone; commas and parentheses separate. */
const TOKEN = /\{[^}]*\}?|'[^']*'?|=|[^\s,()={}';]+|;/g;

function tokensOf(text: string, line: number): Token[] {
  const tokens: Token[] = [];
  for (const match of text.matchAll(TOKEN)) {
    const word = match[0];
    if (word === ';' || word === '$') break;
    const token = { text: word, line, column: match.index + 1 };
    if ((word.startsWith('{') && !word.endsWith('}')) || (word.startsWith("'") && (word.length < 2 || !word.endsWith("'"))))
      throw mistake(token, 'syntax', 'an expression is opened here and never closed on this line');
    tokens.push(token);
  }
  return tokens;
}
