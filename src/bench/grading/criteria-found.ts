import type { ItemFile } from '../views/index.ts';
import type { Judged } from './grade-by-scale.ts';

/** What the file of a unit already tells of the criteria: numbers of tests since the last work, steps of the proof, assemblies that are not its own. */
export function criteriaFound({ tests, proof, slots }: Pick<ItemFile, 'tests' | 'proof' | 'slots'>): Judged {
  const measured = tests
    .filter((test) => !test.before_work)
    .flatMap(({ values }) => values.flatMap(({ criterion, value }) => (criterion ? [[criterion, Math.max(0, value)] as const] : [])));
  const undone = proof.steps.filter(({ outcome }) => outcome === 'fail' || outcome === 'signed-off').length;
  return {
    ...(proof.ready ? { function: undone } : {}),
    ...(slots.length > 0 ? { originality: slots.filter(({ holds }) => holds !== 'its-own').length } : {}),
    ...Object.fromEntries(measured),
  };
}
