import type { Bench, RecordResult, Refusal } from '../bench.ts';
import { BenchError } from '../bench-error.ts';
import { EVENT_VERSION, parseEvent, type AnyEvent, type Stored } from '../events/index.ts';
import type { Clock, LogStore, RowChanges } from '../ports.ts';
import { rowOf } from '../row-of.ts';
import { checkEvent, type RuleContext } from '../rules/index.ts';
import type { ProofView } from '../views/index.ts';
import { ROWS_VERSION } from '../views/index.ts';
import type { BenchState } from '../state.ts';
import { completeEvent } from './complete-event.ts';
import { eventById, push, takeBack, whileAlone, type LiveLog } from './live-log.ts';

export interface Recording {
  readonly live: LiveLog;
  readonly store: LogStore;
  readonly clock: Clock;
  readonly device: string;
  readonly boardPoints: NonNullable<RuleContext['boardPoints']>;
  readonly proofSteps: (state: Readonly<BenchState>, itemId: string) => ProofView;
}

/**
 * A batch through its schemas, the rules and onto the disk: all of it or nothing. Each event is checked against the
 * state as the ones before it left it. What an event leaves out of its envelope is filled in.
 */
export function record(on: Recording, values: readonly unknown[]): ReturnType<Bench['record']> {
  const events: AnyEvent[] = [];
  for (const [index, value] of values.entries()) {
    const parsed = parseEvent(withEnvelope(on, value));
    if (!parsed.ok) return { ...parsed, index };
    events.push(parsed.event);
  }
  return whileAlone(on.live, on.store, () => takeIn(on, events));
}

function withEnvelope({ clock, device }: Recording, value: unknown): unknown {
  if (value === null || typeof value !== 'object' || Array.isArray(value)) return value;
  const given = value as Record<string, unknown>;
  return {
    ...given,
    id: given['id'] ?? clock.newId(),
    at: given['at'] ?? clock.now().toISOString(),
    device: given['device'] ?? device,
    version: given['version'] ?? EVENT_VERSION,
  };
}

function takeIn(on: Recording, events: readonly AnyEvent[]): RecordResult {
  const { live } = on;
  const touched = new Set<string>();
  const fresh: Stored[] = [];
  const outcomes: { id: string; seq: number; duplicate: boolean }[] = [];
  for (const [index, event] of events.entries()) {
    const known = live.byId.get(event.id);
    const refusal = known ? null : objectionTo(on, event, index);
    if (refusal) {
      takeBack(live, fresh.length);
      return refusal;
    }
    const stored = known ?? { seq: live.state.seq + 1, event: completeEvent(event, live.state, live.models) };
    outcomes.push({ id: event.id, seq: stored.seq, duplicate: known !== undefined });
    if (known) continue;
    push(live, stored, touched);
    fresh.push(stored);
  }
  if (fresh.length > 0) keep(on, fresh, touched);
  return { ok: true, stored: outcomes };
}

function objectionTo(on: Recording, event: AnyEvent, index: number): Refusal | null {
  const { live } = on;
  const context: RuleContext = {
    state: live.state,
    models: live.models,
    proofSteps: (itemId) => on.proofSteps(live.state, itemId),
    eventById: (id) => eventById(live, id),
    boardPoints: on.boardPoints,
  };
  const objection = checkEvent(context, event);
  return objection && { ok: false, index, ...objection };
}

function keep({ live, store }: Recording, fresh: readonly Stored[], touched: ReadonlySet<string>): void {
  const appended = store.append(
    fresh.map(({ event }) => event),
    rowChanges(live.state, touched),
  );
  if (appended.some((outcome, index) => outcome.duplicate || outcome.seq !== fresh[index]!.seq)) {
    throw new BenchError(
      'log-out-of-step',
      'the store gave events other places in the log than the bench did: another process appended outside exclusively()',
    );
  }
}

export function rowChanges(state: BenchState, touched: Iterable<string>): RowChanges {
  const ids = [...touched];
  return {
    put: ids.flatMap((id) => (state.items.has(id) ? [rowOf(state, state.items.get(id)!)] : [])),
    remove: ids.filter((id) => !state.items.has(id)),
    version: ROWS_VERSION,
  };
}
