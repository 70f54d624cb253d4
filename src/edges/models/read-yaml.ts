import { LineCounter, parseDocument } from 'yaml';
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
    if (bad.length > 0) return { ok: false, problems: bad.map(syntaxProblem) };
    return { ok: true, value: doc.toJS({ maxAliasCount: MOST_ALIASES }), placeOf: (path) => locate(doc, lineCounter, path) };
  } catch (error) {
    return { ok: false, problems: [unfolding(error)] };
  }
}

function syntaxProblem(error: {
  code: string;
  message: string;
  linePos?: readonly { line: number; col: number }[] | undefined;
}): ModelProblem & Place {
  const [first] = error.linePos ?? [];
  const message = `is not well-formed YAML: ${error.message.split(/ at line \d/)[0]!.split('\n')[0]!}`;
  return { ...problem('model-syntax', [], message, NEXT[error.code] ?? NEXT_ELSE), line: first?.line ?? 1, column: first?.col ?? 1 };
}

const NEXT_ELSE = 'Compare the line and the one above it with the example in docs/model-format.md.';
const NEXT: Readonly<Record<string, string>> = {
  TAB_AS_INDENT: 'Indent with spaces: replace each tab by two spaces.',
  BAD_INDENT: 'Put all entries of a list, and all fields of an entry, in the same column.',
  DUPLICATE_KEY: 'Take one of the two out, or put them together.',
  TAG_RESOLVE_FAILED: 'Take the tag (the word with an exclamation mark) out: a model is plain text, numbers and lists.',
  MISSING_CHAR: 'Close the quote or bracket that was opened.',
};

/** What goes wrong while aliases are followed, or brackets nest deeper than the stack. */
function unfolding(error: unknown): ModelProblem & Place {
  const tooDeep = error instanceof RangeError;
  const message = tooDeep ? 'is nested too deeply' : 'uses aliases (*name) more often than a model may';
  return { ...problem('model-aliases', [], message, 'Write the values out.'), line: 1, column: 1 };
}
