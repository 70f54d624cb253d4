import type { AnyEvent, EventOf, Stored } from '../events/index.ts';
import { isForeign } from '../events/index.ts';

export interface Corrections {
  /** Id of each event that does not count, with the id of the correction that undid it. */
  readonly corrected: ReadonlyMap<string, string>;
  /** Corrections of an event that is not in the log before them. */
  readonly astray: ReadonlySet<string>;
}

/**
 * Which events of a log do not count. A correction undoes an earlier event; a correction that is itself undone has no
 * effect, so that undoing an undo brings the event back. Read from the end, since only later events can undo a correction.
 */
export function resolveCorrections(log: readonly Stored[]): Corrections {
  const corrections = log.map(({ event }) => event).filter(isCorrection);
  const astray = findAstray(log, corrections);
  const corrected = new Map<string, string>();
  for (const correction of corrections.toReversed()) {
    if (astray.has(correction.id) || corrected.has(correction.id)) continue;
    corrected.set(correction.body.corrects, correction.id);
  }
  return { corrected, astray };
}

const isCorrection = (event: AnyEvent): event is EventOf<'correction'> => !isForeign(event) && event.kind === 'correction';

function findAstray(log: readonly Stored[], corrections: readonly EventOf<'correction'>[]): Set<string> {
  if (corrections.length === 0) return new Set();
  const targets = new Set(corrections.map((correction) => correction.body.corrects));
  const seen = new Set<string>();
  const astray = new Set<string>();
  for (const { event } of log) {
    if (!isForeign(event) && event.kind === 'correction' && !seen.has(event.body.corrects)) astray.add(event.id);
    if (targets.has(event.id)) seen.add(event.id);
  }
  return astray;
}
