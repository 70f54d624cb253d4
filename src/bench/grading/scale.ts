/** Grades of a unit that works, best first; what does not work is for parts. */
export const GRADES = ['A', 'B', 'C', 'D'] as const;
export type Grade = (typeof GRADES)[number];

export const CRITERION_IDS = ['function', 'picture', 'light', 'sound', 'distortion', 'colour', 'marks', 'battery', 'originality'] as const;
export type CriterionId = (typeof CRITERION_IDS)[number];

/** One thing that is looked at: the smaller its number, the better. */
export interface Criterion {
  readonly id: CriterionId;
  readonly name: string;
  readonly unit: string;
  readonly atMost: Readonly<Record<Grade, number>>;
  /** What it looks like, for what is not measured; a grade without words lies between its neighbours. */
  readonly examples: Readonly<Partial<Record<Grade, string>>>;
}

/** A written scale. Once units were graded by it, it never changes: a change is another scale with another id. */
export interface Scale {
  readonly id: string;
  readonly criteria: readonly Criterion[];
}
