import type { Evidence } from './model.ts';
import type { Observation } from './observation.ts';

/** A time in which the unit does not change. */
export interface Time {
  readonly observed: readonly Observation[];
  /** What ends it; null for the time that goes on. */
  readonly change: Exclude<Evidence, Observation> | null;
  /** Blocks of slots that are empty then. */
  readonly absent: ReadonlySet<string>;
}

/** Evidence, oldest first, cut at each remedy and transplant; at least one time. To find a slot empty once more is no change. */
export function timesOf(evidence: readonly Evidence[]): Time[] {
  const times: Time[] = [];
  let absent: ReadonlySet<string> = new Set();
  let observed: Observation[] = [];
  for (const piece of evidence) {
    if (piece.kind !== 'remedy' && piece.kind !== 'transplant') {
      observed.push(piece);
      continue;
    }
    const then = piece.kind === 'transplant' ? absentAfter(absent, piece) : absent;
    if (piece.kind === 'transplant' && piece.incoming === null && then.size === absent.size) continue;
    times.push({ observed, change: piece, absent });
    [observed, absent] = [[], then];
  }
  return [...times, { observed, change: null, absent }];
}

function absentAfter(absent: ReadonlySet<string>, { blocks, incoming }: Extract<Evidence, { kind: 'transplant' }>): ReadonlySet<string> {
  if (incoming === null) return new Set([...absent, ...blocks]);
  return new Set([...absent].filter((block) => !blocks.includes(block)));
}
