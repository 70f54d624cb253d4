export * from './rows.ts';
export * from './belief.ts';
export * from './advice.ts';
export * from './item-file.ts';
export * from './places.ts';
export * from './scout.ts';
export * from './bench.ts';
export { AskingView, MarketView } from './market.ts';
export { TaxView } from './tax.ts';
