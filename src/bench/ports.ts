import type { Mat } from '../core/teardown/index.ts';
import type { AnyEvent, MeterMode, Stored } from './events/index.ts';
import type { AnswerOf, PlanJob } from './plan/jobs.ts';
import type { ItemRow } from './views/rows.ts';

/** What the bench needs of the world. Each has one contract suite that every implementation runs. */

export type AppendOutcome = { readonly id: string; readonly seq: number; readonly duplicate: boolean };

/** One page of the item list, newest change first; `next` continues it, null at the end. */
export interface ItemPage {
  readonly rows: readonly ItemRow[];
  readonly next: string | null;
}

export interface ItemQuery {
  /** Words that all must start a word of the item's name, number, model, lot or seller. */
  readonly search?: string;
  readonly status?: readonly string[];
  readonly kind?: string;
  readonly place?: string;
  readonly model?: string;
  readonly after?: string;
  readonly limit: number;
}

/**
 * The log and the lists made from it. `append` returns only when the events and rows are on disk, all of them or none.
 * An event whose id is already stored changes nothing and is reported as a duplicate with its first place in the log.
 */
export interface EventStore {
  append(events: readonly AnyEvent[], rows: RowChanges): AppendOutcome[];
  /** Events after `seq`, in order, at most `limit`. */
  read(afterSeq: number, limit: number): Stored[];
  lastSeq(): number;
  has(ids: readonly string[]): ReadonlySet<string>;
  items(query: ItemQuery): ItemPage;
  /** Number of items in each status. */
  countByStatus(): Readonly<Record<string, number>>;
  /** The seq up to which the rows are made; behind `lastSeq` after a crash or an upgrade of the rows. */
  rowsAt(): { readonly seq: number; readonly version: number };
  replaceRows(rows: readonly ItemRow[], at: { readonly seq: number; readonly version: number }): void;
  /** Runs `work` while no other process can append. */
  exclusively<T>(work: () => T): T;
  close(): void;
}

export interface RowChanges {
  readonly put: readonly ItemRow[];
  readonly remove: readonly string[];
  readonly version: number;
}

export type PhotoSize = 'original' | 'view' | 'thumb';

export interface StoredPhoto {
  /** SHA-256 of the original, hexadecimal. */
  readonly hash: string;
  readonly mediaType: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly bytes: number;
  /** From the photo itself, if it says so. */
  readonly takenAt: string | null;
}

export type PhotoRefusal = {
  readonly ok: false;
  readonly code:
    | 'photo-empty'
    | 'photo-too-large'
    | 'photo-too-many-pixels'
    | 'photo-not-a-picture'
    | 'photo-mislabelled'
    | 'photo-corrupt'
    | 'photo-unsupported';
  readonly name: string;
  readonly detail: string;
};

export interface PhotoStore {
  /** Keeps the original by content and makes the two smaller sizes; the same bytes twice are one photo. */
  put(
    name: string,
    bytes: Uint8Array,
  ): Promise<{ readonly ok: true; readonly photo: StoredPhoto; readonly duplicate: boolean } | PhotoRefusal>;
  get(hash: string, size: PhotoSize): Promise<{ readonly bytes: Uint8Array; readonly mediaType: string } | null>;
  list(): Promise<readonly StoredPhoto[]>;
  close(): Promise<void>;
}

/** Time and new ids come from outside, so that the bench itself is a function of its log. */
export interface Clock {
  now(): Date;
  newId(): string;
}

/** Sheets for paper, as PDF. */
export interface Printer {
  /** The mat at true scale: one millimetre of the layout is one on paper. */
  mat(mat: PrintedMat): Promise<Uint8Array>;
}

/** Pages of shapes in mm from the upper left corner, as `layoutMat` of core/teardown lays them out. */
export type PrintedMat = Extract<Mat, { ok: true }>;

export type { AnswerOf, PlanJob };

/** Works out plans aside from everything else, as one may take seconds. */
export interface PlanWorker {
  /** Rejects where the job cannot be done. */
  run<J extends PlanJob>(job: J): Promise<AnswerOf<J>>;
  close(): Promise<void>;
}

export type InstrumentQuantity = MeterMode;

export type InstrumentAnswer =
  | {
      readonly ok: true;
      readonly value: number | null;
      readonly unit: 'V' | 'A' | 'Ω';
      /** What the instrument says that it is. */
      readonly instrument: string;
    }
  | {
      readonly ok: false;
      readonly code:
        | 'bad-address'
        | 'not-reached'
        | 'timed-out'
        | 'closed'
        | 'not-an-instrument'
        | 'answer-too-long'
        | 'instrument-error'
        | 'not-a-number';
      readonly detail: string;
    };

/** Meters and supplies on the network, at an address that the person typed in ("192.0.2.7" or "meter.local:5025"). */
export interface Instruments {
  /** One reading; null where the instrument shows overload, as the number pad's OL. Never takes longer than some seconds. */
  read(address: string, quantity: InstrumentQuantity): Promise<InstrumentAnswer>;
}
