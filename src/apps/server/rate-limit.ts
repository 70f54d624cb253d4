export interface RateLimit {
  /** Whether one more is allowed for this name now; it counts either way. */
  allows(name: string, nowMs: number): boolean;
}

/** Names that are kept in mind at most; beyond them those that have their whole allowance again go first. */
const MOST_NAMES = 10_000;

/** Lets each name do `burst` at once and `perSecond` for good (token bucket). */
export function rateLimit({ burst, perSecond }: { readonly burst: number; readonly perSecond: number }): RateLimit {
  const buckets = new Map<string, { tokens: number; atMs: number }>();
  const refilled = ({ tokens, atMs }: { tokens: number; atMs: number }, nowMs: number): number =>
    Math.min(burst, tokens + (Math.max(0, nowMs - atMs) / 1000) * perSecond);
  const makeRoom = (nowMs: number): void => {
    for (const [name, bucket] of buckets) if (refilled(bucket, nowMs) >= burst) buckets.delete(name);
    for (const name of buckets.keys()) {
      if (buckets.size < MOST_NAMES) return;
      buckets.delete(name);
    }
  };
  return {
    allows(name, nowMs) {
      const known = buckets.get(name);
      if (!known && buckets.size >= MOST_NAMES) makeRoom(nowMs);
      const tokens = known ? refilled(known, nowMs) : burst;
      const isAllowed = tokens >= 1;
      buckets.set(name, { tokens: isAllowed ? tokens - 1 : tokens, atMs: nowMs });
      return isAllowed;
    },
  };
}
