import type { BenchViews, RecordResult, Refusal } from '../bench.ts';
import type { AnyEvent } from '../events/index.ts';
import { stateText } from '../state-text.ts';
import { wholeLog } from '../whole-log.ts';

/** A bench that a whole log may be moved into. */
export interface MoveTarget {
  readonly bench: Pick<BenchViews, 'log' | 'state'>;
  adopt(events: readonly AnyEvent[]): RecordResult | Promise<RecordResult>;
}

export type Moved =
  | { readonly ok: true; readonly events: number; readonly digest: string }
  | Refusal
  | { readonly ok: false; readonly code: 'move-differs'; readonly from: string; readonly to: string };

/**
 * Copies the log of a bench into an empty one, and compares hashes of both logs and states afterwards: equal, or told as `move-differs`. Nothing is
 * taken away where it came from. `digest` is a hash of a text.
 */
export async function moveLog(from: Pick<BenchViews, 'log' | 'state'>, to: MoveTarget, digest: (text: string) => string): Promise<Moved> {
  const events = wholeLog(from);
  const adopted = await to.adopt(events);
  if (!adopted.ok) return adopted;
  const [left, right] = [from, to.bench].map((bench) => digest(JSON.stringify(wholeLog(bench)) + stateText(bench.state())));
  if (left !== right) return { ok: false, code: 'move-differs', from: left!, to: right! };
  return { ok: true, events: events.length, digest: left! };
}
