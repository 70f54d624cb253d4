import type { z } from 'zod';
import { knownHere, problem, type ModelProblem } from './problem.ts';
import { ModelFile } from './schema.ts';

type Issue = z.core.$ZodIssue;

/** The model file in a parsed value with its defaults filled in, or everything that is wrong with its shape. */
export function readShape(
  value: unknown,
): { readonly ok: true; readonly file: ModelFile } | { readonly ok: false; readonly problems: ModelProblem[] } {
  const parsed = ModelFile.safeParse(value);
  if (parsed.success) return { ok: true, file: parsed.data };
  return { ok: false, problems: parsed.error.issues.flatMap((issue) => problemsOf(issue, value)) };
}

function problemsOf(issue: Issue, value: unknown): ModelProblem[] {
  const path = pathOf(issue);
  if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => unknownField([...path, key]));
  if (issue.code === 'invalid_union') return unionProblems(issue, value);
  if (issue.code === 'invalid_key')
    return [problem('model-unknown-field', path, `has a name that does not belong here: ${issue.issues[0]!.message}`, SEE)];
  if (issue.code === 'invalid_type' && valueAt(value, path) === undefined) return [missing(path)];
  return [problem('model-shape', path, clause(issue.message), SEE)];
}

/** Of the forms that a value may have, the problems of the one that it comes nearest to: the one whose problem lies deepest. */
function unionProblems(issue: Extract<Issue, { code: 'invalid_union' }>, value: unknown): ModelProblem[] {
  const path = pathOf(issue);
  const depth = (issues: readonly Issue[]): number =>
    Math.max(...issues.map((each) => each.path.length + (each.code === 'unrecognized_keys' ? 1 : 0)));
  const nearestForm = [...issue.errors].filter((issues) => issues.length > 0).sort((a, b) => depth(b) - depth(a))[0];
  if (!nearestForm || depth(nearestForm) === 0)
    return [problem('model-shape', path, `${clause(nearestForm?.[0]?.message ?? issue.message)}, or another form`, SEE)];
  return nearestForm.flatMap((each) => problemsOf({ ...each, path: [...path, ...each.path] } as Issue, value));
}

const SEE = 'Put it right as docs/model-format.md shows for this section; an editor that reads models/model.schema.json marks it too.';

const missing = (path: ModelProblem['path']): ModelProblem =>
  problem('model-shape', path, 'is missing', 'Add it; docs/model-format.md has an example of the section.');

function unknownField(path: ModelProblem['path']): ModelProblem {
  const key = String(path.at(-1));
  const known = path.length === 1 ? ` ${knownHere(key, Object.keys(ModelFile.shape))}` : '';
  return problem('model-unknown-field', path, 'is not a field of this place', `Correct its spelling or take it out.${known}`);
}

/** "Invalid input: expected number, received string" as a clause behind the name of a field. */
const clause = (message: string): string =>
  message.replace(/^Invalid input: e/, 'is not as e').replace(/^Invalid (\w+): /, 'is not a valid $1: ');

const pathOf = (issue: Issue): (string | number)[] => issue.path.map((part) => (typeof part === 'symbol' ? String(part) : part));

const valueAt = (value: unknown, path: ModelProblem['path']): unknown =>
  path.reduce<unknown>(
    (at, key) => (typeof at === 'object' && at !== null ? (at as Record<string | number, unknown>)[key] : undefined),
    value,
  );
