import { mistake, type Card, type Token } from './types.ts';

/** A definition with what stands inside: the whole text, or one `.subckt`. Names are lower case. */
export interface Deck {
  readonly name: string;
  readonly ports: readonly string[];
  /** `name=expression` pairs: of `.param` lines, and the defaults of a subcircuit. */
  readonly params: Map<string, Token>;
  readonly models: Map<string, ModelCard>;
  readonly decks: Map<string, Deck>;
  readonly elements: Card[];
  readonly notes: string[];
  temperatureC: Token | undefined;
}

export interface ModelCard {
  readonly type: string;
  readonly params: ReadonlyMap<string, Token>;
}

const emptyDeck = (name: string, ports: readonly string[]): Deck => ({
  name,
  ports,
  params: new Map(),
  models: new Map(),
  decks: new Map(),
  elements: [],
  notes: [],
  temperatureC: undefined,
});

/** Cards that have no effect on an operating point. */
const WITHOUT_EFFECT = /^\.(op|dc|ac|tran|tf|noise|print|plot|probe|save|options?|width|ic|nodeset|meas|measure|global)$/i;
const REFUSED: Readonly<Record<string, string>> = {
  '.include': 'nothing is read from other files: paste its text here',
  '.inc': 'nothing is read from other files: paste its text here',
  '.lib': 'nothing is read from other files: paste the models here',
  '.if': 'conditional cards are not read: keep the branch that you need',
  '.func': 'functions are not read: write the expression where it is used',
};

/** The cards sorted into definitions and elements, subcircuits nested as they stand. Throws a NetlistMistake. */
export function readDeck(cards: readonly Card[]): Deck {
  const open: Deck[] = [emptyDeck('', [])];
  for (const card of cards) {
    const head = card.tokens[0]!;
    const word = head.text.toLowerCase();
    if (word === '.end') break;
    if (word === '.ends') closeDeck(open, head);
    else if (word === '.subckt') openDeck(open, card);
    else if (word.startsWith('.')) readDot(open.at(-1)!, card, word);
    else open.at(-1)!.elements.push(card);
  }
  if (open.length > 1) throw mistake({ line: 1, column: 1 }, 'syntax', `the subcircuit "${open.at(-1)!.name}" is never closed with .ends`);
  return open[0]!;
}

function closeDeck(open: Deck[], head: Token): void {
  if (open.length === 1) throw mistake(head, 'syntax', '.ends without a .subckt before it');
  open.pop();
}

function openDeck(open: Deck[], card: Card): void {
  const [head, name, ...rest] = card.tokens;
  if (!name) throw mistake(head!, 'syntax', '.subckt needs a name and its nodes');
  const { words, pairs } = splitPairs(rest.filter((token) => token.text.toLowerCase() !== 'params:'));
  const deck = emptyDeck(
    name.text.toLowerCase(),
    words.map((token) => token.text.toLowerCase()),
  );
  for (const [key, value] of pairs) deck.params.set(key, value);
  const parent = open.at(-1)!;
  if (parent.decks.has(deck.name)) throw mistake(name, 'duplicate', `the subcircuit "${name.text}" is defined twice`);
  parent.decks.set(deck.name, deck);
  open.push(deck);
}

function readDot(deck: Deck, card: Card, word: string): void {
  const head = card.tokens[0]!;
  if (word === '.param' || word === '.params') addParams(deck, card);
  else if (word === '.model') addModel(deck, card);
  else if (word === '.temp') deck.temperatureC = card.tokens[1];
  else if (WITHOUT_EFFECT.test(word)) deck.notes.push(`line ${head.line}: ${head.text} has no effect on an operating point`);
  else
    throw mistake(head, 'unsupported', `"${head.text}" cannot be read here${REFUSED[word] ? `: ${REFUSED[word]}` : '; remove the line'}`);
}

function addParams(deck: Deck, card: Card): void {
  const { words, pairs } = splitPairs(card.tokens.slice(1));
  if (words.length > 0 || pairs.size === 0) throw mistake(words[0] ?? card.tokens[0]!, 'syntax', '.param wants name=value pairs');
  for (const [key, value] of pairs) deck.params.set(key, value);
}

function addModel(deck: Deck, card: Card): void {
  const [head, name, type, ...rest] = card.tokens;
  if (!name || !type) throw mistake(head!, 'syntax', '.model needs a name and a type, such as: .model D1N D(IS=1e-14)');
  const key = name.text.toLowerCase();
  if (deck.models.has(key)) throw mistake(name, 'duplicate', `the model "${name.text}" is defined twice`);
  const { words, pairs } = splitPairs(rest);
  if (words.length > 0) throw mistake(words[0]!, 'syntax', `"${words[0]!.text}" is not a name=value pair`);
  deck.models.set(key, { type: type.text.toLowerCase(), params: pairs });
}

/** Words before and between, and `name=value` pairs by lower-case name. */
export function splitPairs(tokens: readonly Token[]): { words: Token[]; pairs: Map<string, Token> } {
  const words: Token[] = [];
  const pairs = new Map<string, Token>();
  for (let i = 0; i < tokens.length; i++) {
    if (tokens[i + 1]?.text !== '=') {
      if (tokens[i]!.text === '=') throw mistake(tokens[i]!, 'syntax', 'a "=" without a name before it');
      words.push(tokens[i]!);
      continue;
    }
    const value = tokens[i + 2];
    if (!value || value.text === '=') throw mistake(tokens[i + 1]!, 'syntax', `"${tokens[i]!.text}=" has no value`);
    pairs.set(tokens[i]!.text.toLowerCase(), value);
    i += 2;
  }
  return { words, pairs };
}
