import type { TestVerdict } from '../events/index.ts';
import { gradeByScale, SCALE_1, type Judged } from '../grading/index.ts';

/** Good for the grades A and B, suspect for C, bad below: so a test and the grade never speak against each other. */
export function verdictByScale(judged: Judged): TestVerdict {
  const { grade } = gradeByScale(SCALE_1, judged);
  if (grade === null) return 'not-known';
  return grade === 'A' || grade === 'B' ? 'good' : grade === 'C' ? 'suspect' : 'bad';
}
