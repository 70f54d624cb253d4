import type { Bench, RecordResult, Refusal } from './bench.ts';
import type { AnyEvent } from './events/index.ts';
import type { PhotoRefusal, PhotoStore } from './ports.ts';

/** A whole bench as it comes out of one file or folder. */
export interface BundleContents {
  readonly events: readonly AnyEvent[];
  readonly photos: readonly { readonly name: string; readonly bytes: Uint8Array }[];
}

/** Reads and writes a whole bench as one file. */
export interface BundleFormat {
  write(events: readonly AnyEvent[], photos: PhotoStore): Promise<Uint8Array>;
  /** `detail` of a refusal is a clause. */
  read(
    bytes: Uint8Array,
  ): Promise<({ readonly ok: true } & BundleContents) | { readonly ok: false; readonly code: string; readonly detail: string }>;
}

export type Taken =
  | { readonly ok: true; readonly events: number; readonly photos: number }
  | Refusal
  | PhotoRefusal
  | { readonly ok: false; readonly code: 'not-empty'; readonly events: number };

/** A bench that a whole log may go into, at once or after a while. */
export interface BundleTaker extends Pick<Bench, 'overview'> {
  adopt(events: readonly AnyEvent[]): RecordResult | Promise<RecordResult>;
}

/**
 * Takes a bundle into an empty bench and says how much came in. Photos go first: they harm nothing without their events,
 * while the log is adopted as a whole or not at all. A photo that is not taken stops it.
 */
export async function takeBundle(bench: BundleTaker, photos: PhotoStore, contents: BundleContents): Promise<Taken> {
  const { events } = bench.overview();
  if (events > 0) return { ok: false, code: 'not-empty', events };
  const kept = await Promise.all(contents.photos.map((photo) => photos.put(photo.name, photo.bytes)));
  const refused = kept.find((result) => !result.ok);
  if (refused && !refused.ok) return refused;
  const adopted = await bench.adopt(contents.events);
  return adopted.ok ? { ok: true, events: contents.events.length, photos: kept.length } : adopted;
}
