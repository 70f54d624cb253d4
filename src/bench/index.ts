export { openBench } from './open-bench.ts';
export { BenchError } from './bench-error.ts';
export type { Bench, BenchParts, RecordResult, Refusal } from './bench.ts';
export { emptyState, foldLog, applyEvent } from './fold/index.ts';
export { checkEvent, RULE_CODES, type Objection, type RuleCode } from './rules/index.ts';
export { booksView, moneyOf } from './books/index.ts';
export { logLine } from './log-line.ts';
export { rowOf } from './row-of.ts';
export { stateText } from './state-text.ts';
