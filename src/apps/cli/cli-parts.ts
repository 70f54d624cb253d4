import type { Bench } from '../../bench/bench.ts';
import type { SharedBench } from '../../bench/shared/index.ts';
import type { BoardShelf } from '../../bench/boards/index.ts';
import type { BackupShelf, Clock, ModelBundleFormat, PhotoStore, Printer } from '../../bench/ports.ts';
import type { CompareDesk } from '../../bench/eyes/index.ts';
import type { BundleFormat } from '../../bench/take-bundle.ts';

/** An opened bench; `close` lets go of its files. */
export interface OpenedBench {
  readonly bench: Bench;
  readonly photos: PhotoStore;
  readonly backups: BackupShelf;
  /** What circuits say; without it advice goes by model files alone. */
  readonly boards?: BoardShelf;
  /** Compares photos. */
  readonly eyes: CompareDesk;
  /** This device, as events name it. */
  readonly device: string;
  close(): Promise<void>;
}

/** The bench over a database that several servers share; `close` lets go of it. */
export type SharedLog = SharedBench;

/** What the command line needs of the world; `main.ts` wires it, tests pass their own. */
export interface CliParts {
  /** With `compute`, circuits that are not computed yet are begun. */
  readonly open: (home: string, compute: boolean) => Promise<OpenedBench>;
  /** The bench of a database, with the models of a folder. Rejects as `open` does. */
  readonly openShared: (home: string, url: string) => Promise<SharedLog>;
  /** The photos of a bucket; null for an address that names none. */
  readonly openBucket: (address: string) => PhotoStore | null;
  readonly bundle: BundleFormat;
  readonly modelBundles: ModelBundleFormat;
  readonly printer: Printer;
  readonly clock: Clock;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Rejects when there is no such file; a file of more than `mostBytes` is not read. */
  readonly readFile: (path: string, mostBytes: number) => Promise<Uint8Array | 'too-large'>;
  readonly writeFile: (path: string, bytes: Uint8Array) => Promise<void>;
  /** Runs the server until it ends, and gives its exit code. */
  readonly serve: (args: readonly string[]) => Promise<number>;
  readonly version: string;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}
