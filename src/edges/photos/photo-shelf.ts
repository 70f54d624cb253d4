/**
 * Where the files of photos lie, by hash and ending. A file is there whole or not at all, and is never changed. What `write` has resolved for
 * is kept.
 */
export interface PhotoShelf {
  write(hash: string, ending: string, bytes: Uint8Array | string): Promise<void>;
  /** Null when there is no such file. */
  read(hash: string, ending: string): Promise<Uint8Array | null>;
  /** Hashes of the files with this ending, in order. */
  hashes(ending: string): Promise<string[]>;
  /** Removes what an interrupted write left behind. */
  sweep(): Promise<void>;
  close(): Promise<void>;
}
