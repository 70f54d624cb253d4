import type { CsvLine } from '../csv/csv-table.ts';
import type { BenchState } from '../state.ts';
import type { FitQuestion, FitView } from '../views/index.ts';
import type { ListedPart } from './listed-part.ts';
import { partsFromCsv } from './parts-list.ts';
import { patternOf } from './pattern-record.ts';
import { given, whichFit, type Candidate } from './which-fit.ts';

interface Means {
  readonly bags: BenchState['bags'];
  /** Takes a CSV text apart. */
  readonly linesOf: (text: string) => readonly CsvLine[];
  readonly shouldStop?: () => boolean;
}

/** Lays every part that the question names over its place: those that are given, those of the drawer, those of a supplier's list. */
export function answerFit(question: FitQuestion, { bags, linesOf, shouldStop }: Means): FitView {
  const own = question.drawer ? [...bags.values()] : [];
  const list = question.list === '' ? { parts: [], problems: [] } : partsFromCsv(linesOf(question.list));
  const candidates = [
    ...question.parts.map((part) => given(part.name, patternOf(part))),
    ...own.flatMap((bag) => ofBag(bag) ?? []),
    ...list.parts.map(listed),
  ];
  return {
    ...whichFit(patternOf(question.place), candidates, shouldStop),
    without_terminals: own.filter(({ pattern }) => pattern === null).map(({ id, name }) => ({ bag_id: id, name })),
    problems: list.problems.map(({ line, field, message, next }) => ({ line, sentence: `Line ${line}, ${field} ${message}. ${next}` })),
  };
}

/** A bag of the drawer as a candidate; undefined while nothing is known of its terminals, or it is empty. */
export const ofBag = (
  bag: Pick<Candidate, 'name'> & { id: string; count: number; pattern: Parameters<typeof patternOf>[0] | null },
): Candidate | undefined =>
  bag.pattern === null || bag.count === 0
    ? undefined
    : { name: bag.name, from: 'drawer', bag_id: bag.id, count: bag.count, supplier: '', price: '', pattern: patternOf(bag.pattern) };

export const listed = ({ name, supplier, price, pattern }: ListedPart): Candidate => ({
  name,
  from: 'list',
  bag_id: null,
  count: null,
  supplier,
  price,
  pattern,
});
