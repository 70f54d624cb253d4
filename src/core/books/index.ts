export { takeFifo, layersCost, type Layer, type Taken } from './fifo.ts';
export { splitByValue, shareOfCost } from './relative-value.ts';
export { unbalancedEvents, accountTotals, type LedgerLine } from './ledger.ts';
export { assertBalanced, type CarriedCosts } from './assert-balanced.ts';
export { BooksError } from './books-error.ts';
export { globalMargins, marginTax, type GlobalMargin, type GlobalPeriod } from './margin-scheme.ts';
export { smallTrader, type SmallTrader } from './small-trader.ts';
export { stockBook, type StockLine, type StockThing } from './stock-book.ts';
