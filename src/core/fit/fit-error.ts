/** A caller's mistake in fit: `code` says which. */
export class FitError extends Error {
  constructor(
    readonly code: 'bad-size' | 'bad-scale' | 'bad-count' | 'unsound-fit',
    message: string,
  ) {
    super(message);
    this.name = 'FitError';
  }
}
