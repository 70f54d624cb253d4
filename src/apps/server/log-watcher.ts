const LOOK_EVERY_MS = 1000;

export interface LogWatcher {
  /** Calls `tell` with the last seq at once and whenever it has grown; returns what ends that. */
  watch(tell: (seq: number) => void): () => void;
  /** Looks now: after this process itself has added to the log. */
  look(): void;
  onClose(call: () => void): void;
  /** Ends all watching. */
  close(): void;
}

/** Watches the end of a log that other processes may add to. Looks once a second, and only while somebody watches. */
export function watchLog(lastSeq: () => number): LogWatcher {
  const watchers = new Set<(seq: number) => void>();
  const closers = new Set<() => void>();
  let known = 0;
  let timer: ReturnType<typeof setInterval> | undefined;

  const look = (): void => {
    if (watchers.size === 0) return;
    const seq = lastSeq();
    if (seq === known) return;
    known = seq;
    for (const tell of watchers) tell(seq);
  };
  const stopIfAlone = (): void => {
    if (watchers.size > 0) return;
    clearInterval(timer);
    timer = undefined;
  };
  return {
    watch(tell) {
      known = lastSeq();
      for (const each of watchers) each(known);
      watchers.add(tell);
      tell(known);
      timer ??= setInterval(look, LOOK_EVERY_MS);
      return () => {
        watchers.delete(tell);
        stopIfAlone();
      };
    },
    look,
    onClose: (call) => void closers.add(call),
    close() {
      watchers.clear();
      stopIfAlone();
      for (const call of closers) call();
    },
  };
}
