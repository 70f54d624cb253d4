/** A caller's mistake in this room: `code` says which. */
export class TeardownError extends Error {
  constructor(
    readonly code: 'duplicate-step' | 'unknown-step' | 'bad-number' | 'not-an-order' | 'cycle',
    message: string,
  ) {
    super(message);
    this.name = 'TeardownError';
  }
}
