import { QuantityError } from './brand.ts';

/**
 * Digits after the point per ISO 4217 currency, where it is not 2. The table of Intl is not used: it rounds some
 * currencies to what is usual in cash (HUF 0) while ISO 4217 says 2.
 * Source: ISO 4217 (figures from memory; checked against check values 7.12).
 */
const ODD_DIGITS: Readonly<Record<string, number>> = {
  ...Object.fromEntries('BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF'.split(' ').map((c) => [c, 0])),
  ...Object.fromEntries('BHD IQD JOD KWD LYD OMR TND'.split(' ').map((c) => [c, 3])),
};

/** The currencies offered in lists. Any three capital letters are accepted as a code. */
export const CURRENCIES: readonly string[] = 'GBP EUR USD JPY AUD CAD CHF CZK DKK HUF NOK PLN SEK KRW KWD ISK'.split(' ');

export const isCurrency = (code: string): boolean => /^[A-Z]{3}$/.test(code);

/** Digits after the point of the minor unit of a currency (2 for GBP, 0 for JPY, 3 for KWD). */
export function currencyDigits(code: string): number {
  if (!isCurrency(code)) throw new QuantityError('unknown-currency', `"${code}" is not a three-letter currency code`);
  return ODD_DIGITS[code] ?? 2;
}

/** The nearest integer, ties to even (IEEE 754 roundTiesToEven). */
export function roundHalfEven(value: number): number {
  const floor = Math.floor(value);
  const rest = value - floor;
  if (rest !== 0.5) return Math.round(value);
  return floor % 2 === 0 ? floor : floor + 1;
}

/** Minor units of `to` for an amount in minor units of `from`, at `rate` units of `to` for one unit of `from`. Half even. */
export function convertMinor(amountMinor: number, from: string, to: string, rate: number): number {
  return roundHalfEven(amountMinor * rate * 10 ** (currencyDigits(to) - currencyDigits(from)));
}

/**
 * An amount split in proportion to non-negative weights, in whole minor units that add up to the amount exactly
 * (largest remainder; equal remainders go to the earlier share). All-zero weights split evenly. Negative amounts mirror.
 */
export function splitMinor(amountMinor: number, weights: readonly number[]): number[] {
  if (!Number.isSafeInteger(amountMinor))
    throw new QuantityError('not-an-integer', `an amount must be whole minor units, got ${amountMinor}`);
  if (weights.length === 0 || weights.some((w) => !(w >= 0) || !Number.isFinite(w)))
    throw new QuantityError('bad-weights', 'a split needs at least one weight, all finite and not negative');
  if (amountMinor < 0) return splitMinor(-amountMinor, weights).map((share) => 0 - share);
  const sum = weights.reduce((a, b) => a + b, 0);
  const exact = weights.map((w) => (sum > 0 ? (amountMinor * w) / sum : amountMinor / weights.length));
  const shares = exact.map(Math.floor);
  const left = amountMinor - shares.reduce((a, b) => a + b, 0);
  const byRemainder = exact.map((x, i) => ({ i, rest: x - shares[i]! })).sort((a, b) => b.rest - a.rest || a.i - b.i);
  for (const { i } of byRemainder.slice(0, left)) shares[i]! += 1;
  return shares;
}

/** "12.50" for 1250 minor units of GBP; no sign of the currency. */
export function formatMinor(amountMinor: number, currency: string): string {
  const digits = currencyDigits(currency);
  const text = String(Math.abs(amountMinor)).padStart(digits + 1, '0');
  const whole = text.slice(0, text.length - digits);
  return `${amountMinor < 0 ? '-' : ''}${whole}${digits > 0 ? `.${text.slice(text.length - digits)}` : ''}`;
}

/** Minor units for a typed amount such as "12", "12.5", "12,50"; undefined when it is not an amount of that currency. */
export function parseMajor(text: string, currency: string): number | undefined {
  const match = /^(-?)(\d{1,12})(?:[.,](\d*))?$/.exec(text.trim());
  if (!match) return undefined;
  const digits = currencyDigits(currency);
  const fraction = match[3] ?? '';
  if (fraction.length > digits) return undefined;
  const minor = Number(match[2]! + fraction.padEnd(digits, '0'));
  return match[1] ? 0 - minor : minor;
}
