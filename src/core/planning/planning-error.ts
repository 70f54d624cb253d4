/** A caller's mistake in planning: `code` says which. */
export class PlanningError extends Error {
  constructor(
    readonly code: 'bad-distribution' | 'bad-count' | 'bad-chance' | 'no-possible-road' | 'bad-pile' | 'bad-choice' | 'broken-plan',
    message: string,
  ) {
    super(message);
    this.name = 'PlanningError';
  }
}
