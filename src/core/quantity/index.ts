export { brand, QuantityError, type Branded } from './brand.ts';
export * from './units.ts';
export { currencyDigits, isCurrency, roundHalfEven, convertMinor, splitMinor, formatMinor, parseMajor, CURRENCIES } from './money.ts';
export { scaledText } from './scaled-text.ts';
