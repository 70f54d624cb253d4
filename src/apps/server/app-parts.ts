import type { BenchDoor, BenchViews } from '../../bench/bench.ts';
import type { BoardShelf } from '../../bench/boards/index.ts';
import type {
  BackupShelf,
  Clock,
  DeviceBook,
  Instruments,
  ModelBundleFormat,
  OutlineFinder,
  PhotoStore,
  Printer,
} from '../../bench/ports.ts';
import type { CompareDesk } from '../../bench/eyes/index.ts';
import type { JobQueue } from '../../bench/ports-jobs.ts';
import type { ErrorNote } from './journal.ts';
import type { BundleFormat } from '../../bench/take-bundle.ts';

/** The open door to the network. */
export interface Network {
  /** Addresses of the bench, each with a slash at its end; the likeliest first. */
  readonly urls: readonly string[];
  /** Host names and addresses of this machine, as a browser writes them. */
  readonly hosts: ReadonlySet<string>;
  readonly fingerprint: string;
}

/** What the server is made of; `main.ts` wires it, tests pass their own. */
export interface AppParts {
  readonly bench: BenchViews;
  /** What may have to wait for other processes on the same log. */
  readonly door: BenchDoor;
  readonly photos: PhotoStore;
  readonly bundle: BundleFormat;
  readonly modelBundles: ModelBundleFormat;
  readonly printer: Printer;
  readonly backups: BackupShelf;
  readonly devices: DeviceBook;
  /** How the network reaches the bench; null while it does not. */
  readonly network: () => Network | null;
  readonly clock: Clock;
  /** Meters and supplies on the network. */
  readonly instruments: Instruments;
  /** What circuits say; a server without it advises by model files alone. */
  readonly boards?: BoardShelf;
  /** Compares photos; a server without it refuses to. */
  readonly eyes?: CompareDesk;
  /** What photos of boards propose; a server without it proposes nothing. */
  readonly outlines?: OutlineFinder;
  /** Folder of the built web app; null serves the interface alone. */
  readonly webDir: string | null;
  readonly version: string;
  /** Folder of the bench, as `/health` tells it to another Salvor on this machine. */
  readonly home: string;
  /** Work that takes seconds. */
  readonly jobs: JobQueue;
  /** Unexpected errors of late, the newest first. */
  readonly errors: () => readonly ErrorNote[];
  /** Where unexpected errors go. */
  readonly log: (sentence: string, error: unknown) => void;
}
