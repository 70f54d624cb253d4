/** A caller's mistake with advice: `code` says which. */
export class AdviceError extends Error {
  constructor(
    readonly code: 'no-such-item',
    message: string,
  ) {
    super(message);
    this.name = 'AdviceError';
  }
}
