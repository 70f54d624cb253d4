export { breakdownView } from './breakdown.ts';
export { booksView, isBalanced } from './books-view.ts';
export { moneyOf } from './money-of.ts';
export { costOf, isGone } from './carried.ts';
