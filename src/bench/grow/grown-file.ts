import { crossProblems } from '../models/cross-references.ts';
import type { Model, ModelFile, ModelProblem } from '../models/index.ts';
import { readShape } from '../models/shape.ts';
import { withFactIn, type DraftFile } from './apply-facts.ts';
import type { GrownFact, GrownModel } from './grown-model.ts';

/** A fact that does not fit into the model any more, and why; it is left out until it does. */
export interface LeftOut {
  readonly fact: GrownFact;
  readonly problem: ModelProblem;
}

export interface GrownFile {
  readonly file: ModelFile;
  readonly leftOut: readonly LeftOut[];
}

type Read = ReturnType<typeof readShape>;

/** A draft as a model file that holds together, or what is wrong with it. */
export function readDraft(draft: DraftFile): Read {
  const shape = readShape(draft);
  if (!shape.ok) return shape;
  const problems = crossProblems(shape.file);
  return problems.length === 0 ? shape : { ok: false, problems };
}

/** What a grown model is before any fact of it: the file that it was begun from, under its own name and at the level of what is inherited. */
const draftOf = (grown: GrownModel, base: ModelFile): DraftFile => ({
  ...base,
  format: 1,
  id: grown.id,
  name: grown.name,
  revision: grown.revision,
  currency: grown.currency,
});

/**
 * The file of a grown model. Facts that do not hold together with the rest are left out and told; that happens only where something that they lean on
 * was taken back, for each was checked when it came. Null where even what it was begun from does not hold together.
 */
export function grownFile(grown: GrownModel, base: ModelFile): GrownFile | null {
  const start = draftOf(grown, base);
  const whole = readDraft(withLevel(grown.facts.reduce(withFactIn, start)));
  if (whole.ok) return { file: whole.file, leftOut: [] };
  let best = readDraft(withLevel(start));
  if (!best.ok) return null;
  let draft = start;
  const leftOut: LeftOut[] = [];
  for (const fact of grown.facts) {
    const tried = withFactIn(draft, fact);
    const read = readDraft(withLevel(tried));
    if (read.ok) [draft, best] = [tried, read];
    else leftOut.push({ fact, problem: read.problems[0]! });
  }
  return { file: best.file, leftOut };
}

/** Level 2 goes with the section `circuit`; the rest is settled once the readings are known. */
export const withLevel = (draft: DraftFile): DraftFile => ({ ...draft, level: draft['circuit'] === undefined ? 0 : 2 });

/** Problems of one more fact, none where it holds together with the rest. */
export function problemsOfFact(model: Model, fact: Pick<GrownFact, 'section' | 'id' | 'field' | 'value'>): readonly ModelProblem[] {
  const file = model.draftCircuit ? { ...model.file, circuit: model.draftCircuit } : model.file;
  const read = readDraft(withLevel(withFactIn(file, fact)));
  return read.ok ? [] : read.problems;
}
