export { packedG, postageOf } from './postage-of.ts';
export { returnReserve } from './return-reserve.ts';
export { askingView } from './asking-view.ts';
export { marketView } from './market-view.ts';
export { pricesKnown } from './prices-known.ts';
