import type { Mat } from '../core/teardown/index.ts';
import type { AnyEvent, MeterMode, ModelBundle, Stored } from './events/index.ts';
import type { AnswerOf, PlanJob } from './plan/jobs.ts';
import type { ReportView, StoryView } from './report/index.ts';
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

/** What of the store keeps the bench in step; its lists are read past the bench. */
export type LogStore = Pick<EventStore, 'append' | 'read' | 'lastSeq' | 'rowsAt' | 'replaceRows' | 'exclusively'>;

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

/** Reads and writes a grown model with its photos as one file. */
export interface ModelBundleFormat {
  write(bundle: ModelBundle, photos: PhotoStore): Promise<Uint8Array>;
  /** `detail` of a refusal is a clause. */
  read(
    bytes: Uint8Array,
  ): Promise<
    | { readonly ok: true; readonly bundle: ModelBundle; readonly photos: readonly { readonly name: string; readonly bytes: Uint8Array }[] }
    | { readonly ok: false; readonly code: string; readonly detail: string }
  >;
}
/** Photos of boards laid on one another, and what was found so far. */
export type {
  CompareRefusal,
  CompareRequest,
  ComparedSize,
  Comparing,
  ComparisonShelf,
  FoundDifference,
  KeptComparison,
  KnownVariation,
  LaidComparison,
  PartPlace,
  PhotoComparer,
  PhotoComparison,
  PhotoJudgement,
  SharePolygon,
} from './eyes/comparer.ts';

export type { NamedOutline, OutlineFinder, OutlineQuestion, PhotoOutlines } from './outline-finder.ts';

/** A backup as the list of its folder shows it, without opening it. */
export interface Backup {
  /** Name of its file. */
  readonly name: string;
  readonly madeAt: string;
  /** Events of the bench when it was made. */
  readonly events: number;
  /** Bytes of its file; its photos lie beside it, once for all backups. */
  readonly bytes: number;
}

/** Where backups go, and whether one is made each night; `folder` null stands for one inside the folder of the bench. */
export interface BackupPlan {
  readonly folder: string | null;
  readonly nightly: boolean;
}

export interface BackupTrouble {
  readonly ok: false;
  readonly code:
    'backup-folder-unfit' | 'backup-folder-gone' | 'backup-not-written' | 'backup-unreadable' | 'backup-newer' | 'no-such-backup';
  /** The folder or file concerned. */
  readonly where: string;
  /** What is wrong, as a clause. */
  readonly detail: string;
}

/** An opened backup, whose events and photo names are those that were written; photos come one by one, each checked against its hash. */
export interface OpenedBackup {
  readonly ok: true;
  readonly events: readonly AnyEvent[];
  readonly photoNames: readonly string[];
  photo(name: string): Promise<{ readonly ok: true; readonly bytes: Uint8Array } | BackupTrouble>;
}

/** Backups in a folder that the person chooses. A backup is there whole or not at all, and is never changed. */
export interface BackupShelf {
  plan(): BackupPlan;
  /** The folder in use. */
  folder(): string;
  setPlan(plan: BackupPlan): Promise<{ readonly ok: true } | BackupTrouble>;
  /** Newest first. */
  list(): Promise<{ readonly ok: true; readonly backups: readonly Backup[] } | BackupTrouble>;
  /** On the disk when it resolves; photos that lie there already are not written again. */
  write(
    events: readonly AnyEvent[],
    photos: PhotoStore,
    by: { readonly at: Date; readonly version: string },
  ): Promise<{ readonly ok: true; readonly backup: Backup } | BackupTrouble>;
  /** By a name of the list, or by the path of a file elsewhere with its photos beside it. */
  open(nameOrPath: string): Promise<OpenedBackup | BackupTrouble>;
  remove(name: string): Promise<void>;
  /** SHA-256 in hexadecimal. */
  digest(text: string): string;
}

/** What a device of a workshop may do: an owner everything, the bench all the work, view only look. */
export const ROLES = ['owner', 'bench', 'view'] as const;
export type Role = (typeof ROLES)[number];

/** A device that has joined over the network. Its name stands in the log beside what it notes. */
export interface JoinedDevice {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly joinedAt: string;
  /** To the hour; null when it has not been seen since it joined. */
  readonly lastSeenAt: string | null;
}

export type JoinRefusal = { readonly ok: false; readonly code: 'invite-unknown' | 'device-name-taken'; readonly detail: string };

/** Devices that may reach the bench over the network. Secrets and keys are kept only as hashes. */
export interface DeviceBook {
  /** In the order in which they joined. */
  list(): readonly JoinedDevice[];
  /** A secret that lets one device join, once, within ten minutes. */
  invite(role: Role): { readonly secret: string; readonly expiresAt: string };
  /** Uses up the secret, and gives the device its key, which never changes. */
  join(secret: string, name: string): { readonly ok: true; readonly device: JoinedDevice; readonly key: string } | JoinRefusal;
  /** The device of a key; null when it was revoked or never was. */
  deviceOf(key: string): JoinedDevice | null;
  /** False when there is no device of that name. */
  revoke(name: string): boolean;
  close(): void;
}

/** Time and new ids come from outside, so that the bench itself is a function of its log. */
export interface Clock {
  now(): Date;
  newId(): string;
}

/** What the sheets and pages say, for those that lay them out. */
export type { ReportPhoto, ReportView, StoryLine, StoryView } from './report/index.ts';

/** Bytes of a photo as JPEG or PNG by its hash; null when it is not here. */
export type PhotoBytes = (hash: string) => Promise<{ readonly bytes: Uint8Array; readonly mediaType: string } | null>;

/** Sheets for paper as PDF, and pages that hold everything that they show, as HTML. */
export interface Printer {
  /** The mat at true scale: one millimetre of the layout is one on paper. */
  mat(mat: PrintedMat): Promise<Uint8Array>;
  /** Labels at true scale, each with a QR code (ISO/IEC 18004) of its link and its words. */
  labels(labels: PrintedLabels): Promise<Uint8Array>;
  reportSheet(report: ReportView, photo: PhotoBytes): Promise<Uint8Array>;
  reportPage(report: ReportView, photo: PhotoBytes): Promise<string>;
  storyPage(story: StoryView, photo: PhotoBytes): Promise<string>;
}

/** Pages of labels; places and sizes in mm from the upper left corner. */
export interface PrintedLabels {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly pages: readonly (readonly PrintedLabel[])[];
}

export interface PrintedLabel {
  readonly link: string;
  /** A square, the white around the code included. */
  readonly code: { readonly x: number; readonly y: number; readonly sizeMm: number };
  readonly words: {
    readonly x: number;
    readonly y: number;
    readonly widthMm: number;
    readonly heightMm: number;
    readonly title: string;
    readonly titleMm: number;
    readonly lines: readonly string[];
    readonly lineMm: number;
  };
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
