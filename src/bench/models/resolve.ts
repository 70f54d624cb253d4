import { crossProblems } from './cross-references.ts';
import { findRing } from './find-ring.ts';
import { fieldText, knownHere, problem, type ModelProblem } from './problem.ts';
import type { ModelFile } from './schema.ts';
import { readShape } from './shape.ts';

export interface ResolvedModels {
  readonly files: ReadonlyMap<string, ModelFile>;
  /** By the name under which the source was handed over; a model with problems is not in `files`. */
  readonly problems: ReadonlyMap<string, readonly ModelProblem[]>;
}

/** What every file says for itself, whatever it is based on. */
const ITS_OWN: ReadonlySet<string> = new Set([
  'format',
  'id',
  'name',
  'revision',
  'level',
  'about',
  'based_on',
  'circuit',
  'photo_corners',
]);

type Source = Readonly<Record<string, unknown>>;

/**
 * Models from parsed YAML values, by name (the name of the folder, which must be the id in the file). A section that a
 * file leaves out is taken over whole from the model named in `based_on`. A faulty model does not keep the others from
 * being resolved, save those based on it.
 */
export function resolveModels(sources: ReadonlyMap<string, unknown>): ResolvedModels {
  const files = new Map<string, ModelFile>();
  const problems = new Map<string, ModelProblem[]>();
  for (const [name, value] of sources) {
    const resolved = resolveOne(name, value, sources);
    if (resolved.ok) files.set(name, resolved.file);
    else problems.set(name, resolved.problems);
  }
  return { files, problems };
}

type Resolved = { readonly ok: true; readonly file: ModelFile } | { readonly ok: false; readonly problems: ModelProblem[] };

function resolveOne(name: string, value: unknown, sources: ReadonlyMap<string, unknown>): Resolved {
  if (!isSource(value))
    return refused(problem('model-shape', [], 'must be a list of named sections', 'Start from the example in docs/model-format.md.'));
  const filled = filledIn(name, value, sources);
  if (!filled.ok) return filled;
  const shape = readShape(filled.source);
  const problems = shape.ok
    ? [...wrongId(name, shape.file), ...unknownFits(shape.file, sources), ...crossProblems(shape.file)]
    : shape.problems;
  if (shape.ok && problems.length === 0) return shape;
  return { ok: false, problems: problems.map((each) => asOwn(each, value)) };
}

/** The source with the sections that it leaves out taken from the models that it is based on, nearest first. */
function filledIn(
  name: string,
  value: Source,
  sources: ReadonlyMap<string, unknown>,
): { ok: true; source: Source } | { ok: false; problems: ModelProblem[] } {
  const ring = findRing([name], (at) => baseOf(sources.get(at)));
  if (ring)
    return refused(
      problem(
        'model-cycle',
        ['based_on'],
        `leads in a ring: ${[...ring, ring[0]].join(' is based on ')}`,
        'Let one of them stand by itself: take its `based_on` out.',
      ),
    );
  let source = value;
  for (let [base] = baseOf(value), user = name; base !== undefined;) {
    const below = sources.get(base);
    if (!isSource(below)) return refused(unusableBase(base, user, name, sources));
    source = { ...Object.fromEntries(Object.entries(below).filter(([key]) => !ITS_OWN.has(key))), ...source };
    [user, [base]] = [base, baseOf(below)];
  }
  return { ok: true, source };
}

function unusableBase(base: string, user: string, name: string, sources: ReadonlyMap<string, unknown>): ModelProblem {
  const through = user === name ? '' : ` (through ${user})`;
  const others = [...sources.keys()].filter((other) => other !== name);
  const why = sources.has(base) ? 'whose own file cannot be read' : 'which is not among the models';
  return problem(
    'model-base',
    ['based_on'],
    `names the model "${base}"${through}, ${why}`,
    `Mend that model first, or correct the name. ${knownHere(base, others)}`,
  );
}

const isSource = (value: unknown): value is Source => typeof value === 'object' && value !== null && !Array.isArray(value);

const baseOf = (value: unknown): [string] | [] => (isSource(value) && typeof value['based_on'] === 'string' ? [value['based_on']] : []);

const refused = (...problems: ModelProblem[]): { ok: false; problems: ModelProblem[] } => ({ ok: false, problems });

const wrongId = (name: string, file: ModelFile): ModelProblem[] =>
  file.id === name
    ? []
    : [problem('model-wrong-id', ['id'], `is "${file.id}", but the folder is named "${name}"`, 'Give both the same name.')];

const unknownFits = (file: ModelFile, sources: ReadonlyMap<string, unknown>): ModelProblem[] =>
  file.slots.flatMap(({ fits }, i) =>
    fits.flatMap((other, j) => {
      if (sources.has(other)) return [];
      const message = `names the model "${other}", which is not among the models`;
      return [
        problem(
          'model-unknown-name',
          ['slots', i, 'fits', j],
          message,
          `Correct the name, or take it out. ${knownHere(other, sources.keys())}`,
        ),
      ];
    }),
  );

/** A problem in a section that was taken over is shown at `based_on`, which is what this file says of it. */
function asOwn(found: ModelProblem, source: Source): ModelProblem {
  const section = found.path[0];
  const base = baseOf(source)[0];
  if (base === undefined || typeof section !== 'string' || Object.hasOwn(source, section)) return found;
  const message = `takes ${section} over from another model, where ${fieldText(found.path)} ${found.message}`;
  return { ...found, path: ['based_on'], message, next: `Write ${section} in this file, or mend it there. ${found.next}` };
}
