import type { HistoryEntry } from '../state.ts';
import type { ProofView } from '../views/index.ts';
import { PROOF_OF_FUNCTION } from './evidence.ts';

/** What was seen of a unit since the last remedy or transplant, by the trials and by the steps of proof. */
export interface Seen {
  /** Functions whose last trial without a known-good accessory worked. */
  readonly works: ReadonlySet<string>;
  /** Something did not work, or the last work was seen not to have mended it. */
  readonly failed: boolean;
}

export function trialsSinceWork(life: readonly HistoryEntry[], proof: ProofView): Seen {
  const change = life.findLastIndex((entry) => entry.kind === 'remedy' || entry.kind === 'slot');
  const last = new Map<string, boolean>();
  for (const entry of life.slice(change + 1)) {
    if (entry.kind !== 'trial') continue;
    const works = entry.outcome === 'works';
    if (!works || entry.with.length === 0) last.set(entry.function, works);
  }
  for (const { id, outcome } of proof.steps)
    if (id.startsWith(PROOF_OF_FUNCTION) && (outcome === 'pass' || outcome === 'fail'))
      last.set(id.slice(PROOF_OF_FUNCTION.length), outcome === 'pass');
  return {
    works: new Set([...last].filter(([, works]) => works).map(([fn]) => fn)),
    failed: [...last.values()].includes(false) || seenNotMended(life[change]),
  };
}

const seenNotMended = (change: HistoryEntry | undefined): boolean =>
  change?.kind === 'remedy' && (change.outcome === 'not-mended' || change.outcome === 'made-worse');
