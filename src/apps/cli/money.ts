import { formatMinor, isCurrency, parseMajor } from '../../core/quantity/index.ts';
import { misuse } from './stop.ts';

/** Minor units of a currency in a typed amount; ends the command when it is not one. */
export function moneyIn(text: string, currency: string, where: string): number {
  if (!isCurrency(currency))
    throw misuse('bad-usage', { where: '--currency', detail: `"${currency}" is not a three-letter currency code` });
  const minor = parseMajor(text, currency);
  if (minor === undefined) throw misuse('bad-amount', { where, detail: text });
  return minor;
}

/** "12.50 GBP". */
export const moneyText = (minor: number, currency: string): string => `${formatMinor(minor, currency)} ${currency}`;
