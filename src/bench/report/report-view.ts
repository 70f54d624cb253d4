import type { TestVerdict } from '../events/index.ts';
import type { ProofView } from '../views/index.ts';

export interface ReportPhoto {
  readonly hash: string;
  readonly side: string;
  readonly caption: string;
  /** Day on which it was noted: 2026-05-01. */
  readonly day: string;
}

/** Photos by what they are to the work: before the first of it, between, after the last; all before where no work was done. */
export interface PhotosAroundWork {
  readonly before: readonly ReportPhoto[];
  readonly during: readonly ReportPhoto[];
  readonly after: readonly ReportPhoto[];
}

export interface ReportGrade {
  readonly grade: string;
  readonly means: string;
  readonly scale: string;
  readonly text: string;
  readonly criteria: readonly { readonly name: string; readonly found: string; readonly grade: string }[];
  /** Criteria that were not looked at. */
  readonly open: readonly string[];
}

/** Everything that a condition report says, in words; edges lay it out. Nothing of money and of persons is in it. */
export interface ReportView {
  readonly title: string;
  readonly unit: string;
  readonly bench: string;
  /** Day of the newest entry about the unit. */
  readonly day: string;
  readonly grade: ReportGrade | null;
  readonly photos: PhotosAroundWork;
  /** Each assembly of the model: its own, of another unit, or missing. */
  readonly parts: readonly { readonly name: string; readonly state: string }[];
  /** Parts that work put in, and what came out of the bags of the drawer. */
  readonly replaced: readonly string[];
  readonly work: readonly string[];
  readonly ready: boolean;
  readonly tests: readonly {
    readonly name: string;
    readonly outcome: ProofView['steps'][number]['outcome'];
    readonly limits: readonly string[];
    readonly measured: readonly string[];
    readonly reason: string;
  }[];
  readonly measured: readonly {
    readonly name: string;
    readonly verdict: TestVerdict;
    readonly text: string;
    readonly values: readonly string[];
  }[];
  readonly cautions: readonly string[];
  /** Address of the file of the unit, for the code that a phone reads. */
  readonly url: string;
}
