/** A caller's mistake in the books, or a broken law of the ledger: `code` says which. */
export class BooksError extends Error {
  constructor(
    readonly code: 'bad-count' | 'bad-rate' | 'unbalanced' | 'cost-lost',
    message: string,
  ) {
    super(message);
    this.name = 'BooksError';
  }
}
