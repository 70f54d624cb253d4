/** A caller's or an edge's mistake with the bench: `code` says which. */
export class BenchError extends Error {
  constructor(
    readonly code: 'log-out-of-step',
    message: string,
  ) {
    super(message);
    this.name = 'BenchError';
  }
}
