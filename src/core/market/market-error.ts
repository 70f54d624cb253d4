/** A caller's mistake with the market: `code` says which. */
export class MarketError extends Error {
  constructor(
    readonly code: 'bad-price' | 'bad-time' | 'bad-chance' | 'no-asks',
    message: string,
  ) {
    super(message);
    this.name = 'MarketError';
  }
}
