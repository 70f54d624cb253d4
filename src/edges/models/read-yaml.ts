import { isNode, LineCounter, parseDocument, visit, type Document } from 'yaml';
import { problem, type ModelProblem } from '../../bench/models/index.ts';
import { locate, type Place } from './locate.ts';

/** A YAML text as a plain value, and where each path of it stands; or everything that keeps it from being read. */
export type YamlText =
  | { readonly ok: true; readonly value: unknown; readonly placeOf: (path: readonly (string | number)[]) => Place }
  | { readonly ok: false; readonly problems: readonly (ModelProblem & Place)[] };

/** A model has no use for aliases; more uses of one than this is an attempt to blow it up. */
const MOST_ALIASES = 20;
const MOST_PROBLEMS = 20;

/** Reads YAML 1.2 with the core schema: no tags of anyone's own, no key twice, few aliases. */
export function readYaml(text: string): YamlText {
  if (isNestedTooDeeply(text)) return { ok: false, problems: [tooDeep] };
  const lineCounter = new LineCounter();
  try {
    const doc = parseDocument(text, {
      lineCounter,
      strict: true,
      uniqueKeys: true,
      version: '1.2',
      schema: 'core',
      prettyErrors: true,
      logLevel: 'silent',
    });
    const bad = [...doc.errors, ...doc.warnings].slice(0, MOST_PROBLEMS);
    if (bad.length > 0) return { ok: false, problems: bad.map((error) => syntaxProblem(error, doc, lineCounter)) };
    const value = doc.toJS({ maxAliasCount: MOST_ALIASES }) as unknown;
    if (holdsItself(value)) return { ok: false, problems: [aliases] };
    return { ok: true, value, placeOf: (path) => locate(doc, lineCounter, path) };
  } catch (error) {
    if (error instanceof ReferenceError) return { ok: false, problems: [aliases] };
    throw error;
  }
}

/** Whether an alias stands inside what it names: such a value has no end. */
function holdsItself(value: unknown, around: readonly unknown[] = []): boolean {
  if (typeof value !== 'object' || value === null) return false;
  return around.includes(value) || Object.values(value).some((inner) => holdsItself(inner, [...around, value]));
}

type YamlError = Document.Parsed['errors'][number] | Document.Parsed['warnings'][number];

function syntaxProblem(error: YamlError, doc: Document.Parsed, lines: LineCounter): ModelProblem & Place {
  const { line, col } = lines.linePos(error.code === 'MISSING_CHAR' ? opened(doc, error.pos[0]) : error.pos[0]);
  const message = `is not well-formed YAML: ${error.message.split(/ at line \d/)[0]!.split('\n')[0]!}`;
  return { ...problem('model-syntax', [], message, NEXT[error.code] ?? NEXT_ELSE), line: Math.max(1, line), column: Math.max(1, col) };
}

/** A quote or bracket that is missing is noticed where the text ends; the mistake is where the innermost thing around it begins. */
function opened(doc: Document.Parsed, offset: number): number {
  let start = offset;
  visit(doc, (_, node) => {
    if (isNode(node) && node.range && node.range[0] <= offset && offset <= node.range[2]) start = node.range[0];
  });
  return start;
}

const NEXT_ELSE = 'Compare the line and the one above it with the example in docs/model-format.md.';
const NEXT: Readonly<Record<string, string>> = {
  TAB_AS_INDENT: 'Indent with spaces: replace each tab by two spaces.',
  BAD_INDENT: 'Put all entries of a list, and all fields of an entry, in the same column.',
  DUPLICATE_KEY: 'Take one of the two out, or put them together.',
  TAG_RESOLVE_FAILED: 'Take the tag (the word with an exclamation mark) out: a model is plain text, numbers and lists.',
  MISSING_CHAR: 'Close the quote or bracket that was opened.',
};

const MOST_LEVELS = 300;
const tooDeep = { ...problem('model-syntax', [], 'is nested too deeply', 'A model needs no more than six levels.'), line: 1, column: 1 };

/**
 * Whether reading a text could exhaust the stack, which no `catch` survives: more brackets open at once, more
 * indicators on one line or a deeper indentation than any model has. Text in quotes counts too; it has not so many.
 */
function isNestedTooDeeply(text: string): boolean {
  let open = 0;
  for (const [bracket] of text.matchAll(/[[\]{}]/g)) {
    open = Math.max(0, open + (bracket === '[' || bracket === '{' ? 1 : -1));
    if (open > MOST_LEVELS) return true;
  }
  return text.split('\n').some((line) => line.search(/[^ ]/) > MOST_LEVELS || [...line.matchAll(/[-?:](?=\s)/g)].length > MOST_LEVELS);
}

/** What goes wrong while aliases are followed. */
const aliases = {
  ...problem('model-aliases', [], 'uses aliases (*name) more often than a model may', 'Write the values out.'),
  line: 1,
  column: 1,
};
