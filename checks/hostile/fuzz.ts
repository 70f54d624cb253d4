import * as fc from 'fast-check';
import { mutated } from './mutated.ts';
import type { Parser } from './parsers.ts';

/** An input that takes longer counts as a fault: readers of small texts take a thousandth of it. */
const TOO_LONG_MS = 2000;

export interface Fuzzed {
  readonly tried: number;
  /** How many were taken for good: where none is, nothing behind the first check was reached. */
  readonly taken: number;
  /** The smallest text found that the reader falls over, and how; null where none is. */
  readonly crash: { readonly text: string; readonly error: string } | null;
  readonly slowestMs: number;
}

/** What is wrong with how a reader met one text; null when it took it or refused it with words, in time. */
export function faultOf({ read }: Parser, text: string): { readonly fault: string | null; readonly taken: boolean; readonly ms: number } {
  const start = performance.now();
  try {
    const said = read(text);
    const ms = performance.now() - start;
    if (said !== null && said.trim().length < 5) return { fault: `refused with "${said}"`, taken: false, ms };
    return { fault: ms > TOO_LONG_MS ? `took ${Math.round(ms)} ms` : null, taken: said === null, ms };
  } catch (error) {
    return {
      fault: error instanceof Error ? `${error.name}: ${error.message}` : String(error),
      taken: false,
      ms: performance.now() - start,
    };
  }
}

/** Tries so many texts on a reader, the same ones for the same seed. Stops at the first fault, with the smallest text that still shows it. */
export function fuzz(parser: Parser, seed: number, runs: number): Fuzzed {
  let [tried, taken, slowestMs] = [0, 0, 0];
  const property = fc.property(mutated(parser.seeds, parser.words), (text) => {
    const met = faultOf(parser, text);
    tried++;
    if (met.taken) taken++;
    slowestMs = Math.max(slowestMs, met.ms);
    if (met.fault !== null) throw new Error(met.fault);
  });
  const result = fc.check(property, { numRuns: runs, seed });
  const [text] = result.counterexample ?? [];
  const crash = text === undefined ? null : { text, error: String(result.errorInstance) };
  return { tried, taken, crash, slowestMs };
}
