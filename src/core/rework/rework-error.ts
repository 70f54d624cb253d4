/** A caller's mistake in this room: `code` says which. */
export class ReworkError extends Error {
  constructor(
    readonly code: 'bad-number' | 'unknown-series' | 'too-few-samples',
    message: string,
  ) {
    super(message);
    this.name = 'ReworkError';
  }
}

/** Throws `ReworkError` unless every one of these is a finite number above 0. */
export function assertPositive(values: Readonly<Record<string, number>>): void {
  for (const [name, value] of Object.entries(values))
    if (!(value > 0) || !Number.isFinite(value)) throw new ReworkError('bad-number', `${name} must be a number above 0, got ${value}`);
}
