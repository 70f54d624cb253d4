/** A caller's mistake in this room: `code` says which. */
export class NettingError extends Error {
  constructor(
    readonly code: 'not-nets' | 'unknown-pin' | 'bad-name' | 'not-a-part' | 'shape',
    message: string,
  ) {
    super(message);
    this.name = 'NettingError';
  }
}
