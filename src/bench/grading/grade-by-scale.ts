import { GRADES, type CriterionId, type Grade, type Scale } from './scale.ts';

/** What was measured or judged by the examples; what is left out was not looked at. */
export type Judged = Readonly<Partial<Record<CriterionId, number>>>;

export interface CriterionGrade {
  readonly id: CriterionId;
  readonly value: number;
  readonly grade: Grade | 'parts';
  /** How far it may go for this grade; null for parts. */
  readonly limit: number | null;
}

export interface ScaleGrade {
  readonly scale: string;
  /** The worst of the criteria; null when nothing was judged. */
  readonly grade: Grade | 'parts' | null;
  readonly criteria: readonly CriterionGrade[];
  /** What keeps it from the next better grade. */
  readonly heldBackBy: readonly CriterionId[];
  /** Not looked at, so the grade is only as good as the rest: to be said on the report. */
  readonly open: readonly CriterionId[];
}

/** The grade of a unit by a written scale: each criterion by its limits, and the unit by its worst. */
export function gradeByScale(scale: Scale, judged: Judged): ScaleGrade {
  const criteria = scale.criteria.flatMap(({ id, atMost }): CriterionGrade[] => {
    const value = judged[id];
    if (value === undefined) return [];
    const grade = GRADES.find((each) => value <= atMost[each]);
    return [{ id, value, grade: grade ?? 'parts', limit: grade ? atMost[grade] : null }];
  });
  const worst = criteria.length === 0 ? null : ([...GRADES, 'parts'] as const)[Math.max(...criteria.map(({ grade }) => rank(grade)))]!;
  return {
    scale: scale.id,
    grade: worst,
    criteria,
    heldBackBy: worst === 'A' ? [] : criteria.filter(({ grade }) => grade === worst).map(({ id }) => id),
    open: scale.criteria.map(({ id }) => id).filter((id) => judged[id] === undefined),
  };
}

const rank = (grade: Grade | 'parts'): number => (grade === 'parts' ? GRADES.length : GRADES.indexOf(grade));
