import { currencyDigits, formatMinor } from '../../../core/quantity/index.ts';

/** "£12.50" for 1250 minor units of GBP; a loss has a true minus sign. */
export function money(amountMinor: number, currency: string): string {
  const digits = currencyDigits(currency);
  const format = new Intl.NumberFormat(undefined, {
    style: 'currency',
    currency,
    currencyDisplay: 'narrowSymbol',
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  });
  return format.format(Number(formatMinor(amountMinor, currency))).replace('-', '−');
}

/** "£4 to £31" in whole major units, for the spread of an estimate. */
export function moneySpread(lowMinor: number, highMinor: number, currency: string): string {
  return `${roughMoney(lowMinor, currency)} to ${roughMoney(highMinor, currency)}`;
}

/** An estimate, to whole major units: no more digits than it is good for. */
export function roughMoney(amountMinor: number, currency: string): string {
  const format = new Intl.NumberFormat(undefined, {
    style: 'currency',
    currency,
    currencyDisplay: 'narrowSymbol',
    maximumFractionDigits: 0,
  });
  return format.format(Math.round(Number(formatMinor(Math.round(amountMinor), currency))) + 0).replace('-', '−');
}

/** "+£12.50" or "−£3.00": for profit. */
export const signedMoney = (amountMinor: number, currency: string): string =>
  `${amountMinor > 0 ? '+' : ''}${money(amountMinor, currency)}`;
