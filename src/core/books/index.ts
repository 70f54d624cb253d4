export { takeFifo, layersCost, type Layer, type Taken } from './fifo.ts';
export { splitByValue, shareOfCost } from './relative-value.ts';
export { unbalancedEvents, accountTotals, type LedgerLine } from './ledger.ts';
export { assertBalanced, type CarriedCosts } from './assert-balanced.ts';
export { BooksError } from './books-error.ts';
