import type { Session } from '../session.ts';
import { numberIn, type Options } from './add-command.ts';

/** Options of everything that may be paid in another currency. */
export const FOREIGN = [
  ['--currency <code>', 'when it is not that of the bench'],
  ['--rate <number>', 'bench currency for one unit of it'],
] as const;

/** The currency that was given, else that of the bench. */
export const currencyOf = (session: Session, options: Options): string => options.currency ?? session.bench.overview().currency;

/** `{rate}` when given. */
export function rateOf(options: Options): { rate?: number } {
  const rate = numberIn(options, 'rate');
  return rate === undefined ? {} : { rate };
}

/** What the models call a part; its id where none knows it. */
export function partName({ bench }: Session, part: string): string {
  const known = bench.models().flatMap(({ id }) => bench.model(id)?.file.parts.filter((each) => each.id === part) ?? []);
  return known[0]?.name ?? part;
}
