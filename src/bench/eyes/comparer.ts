import type { Agreement, AlignmentRefusal, CompareStep, DifferenceKind, PhotoQuality, Pose, Zone } from '../../core/vision/index.ts';

/** Places on a photo as shares of its width, from its upper left corner as it is seen upright: good for any size of the photo. */
export type SharePolygon = readonly (readonly [x: number, y: number])[];

/** A known part on the first reference: its middle and size as shares of that photo's width, its turn in degrees with the clock as seen. */
export interface PartPlace {
  readonly part: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly turnDeg: number;
}

/** A place on a photo that shows how a good board may look, too. */
export interface KnownVariation {
  readonly photo: Uint8Array;
  readonly outline: SharePolygon;
}

/** Photos as they are kept: bytes of JPEG, PNG or WebP. The first reference gives the frame. */
export interface CompareRequest {
  readonly references: readonly Uint8Array[];
  readonly other: Uint8Array;
  readonly parts?: readonly PartPlace[];
  /** Newest last. */
  readonly variations?: readonly KnownVariation[];
}

/** A size in px, and what it is multiplied by to become the upright photo's own. */
export interface ComparedSize {
  readonly width: number;
  readonly height: number;
  readonly toOriginal: number;
}

/** A difference that is put before the person; nothing is believed of it until they confirm it. */
export interface FoundDifference {
  /** Around it, px of the first reference as it was compared. */
  readonly outline: readonly (readonly [number, number])[];
  /** The same on the other photo. */
  readonly outlineThere: SharePolygon;
  readonly kind: DifferenceKind;
  /** Chance that the boards differ there, and not just the photos; 0..1. */
  readonly chance: number;
  readonly part?: string;
}

export interface LaidComparison {
  readonly ok: true;
  readonly reference: ComparedSize;
  readonly other: ComparedSize;
  /** Most likely first. */
  readonly proposals: readonly FoundDifference[];
  /** Where nothing was compared, px of the first reference as it was compared. */
  readonly zones: readonly Zone[];
  readonly pose: Pose;
  readonly agreement: Agreement;
  /** References that could be laid on the first, itself included; and variations that were used. */
  readonly used: { readonly references: number; readonly variations: number };
  /** The other photo as it lies on the reference, a JPEG of the reference's compared size. */
  readonly laid: Uint8Array;
}

export type PhotoCorrupt = { readonly ok: false; readonly code: 'photo-corrupt'; readonly detail: string };
export type CompareRefusal = AlignmentRefusal | PhotoCorrupt;
export type PhotoComparison = LaidComparison | CompareRefusal;

/** How a photo was taken: what it says of itself, and how the camera stood against the reference, or why that cannot be said. */
export type PhotoJudgement =
  | {
      readonly ok: true;
      readonly quality: PhotoQuality;
      readonly against: { readonly ok: true; readonly pose: Pose; readonly reference: ComparedSize } | AlignmentRefusal | null;
    }
  | PhotoCorrupt;

/** A comparison that is under way. */
export interface Comparing {
  readonly done: Promise<PhotoComparison>;
  /** Stops it at the next step; `done` then says `stopped`. */
  cancel(): void;
}

/** Compares photos beside the program's own work. */
export interface PhotoComparer {
  compare(request: CompareRequest, progress?: (step: CompareStep | 'decoding', share: number) => void): Comparing;
  /** Judges a photo, and its pose against a reference where there is one; within some two seconds. */
  judge(photo: Uint8Array, reference: Uint8Array | null): Promise<PhotoJudgement>;
  close(): Promise<void>;
}

/** Comparisons that were made, by the name of what was compared and how. They only save time, and may be lost. */
export interface ComparisonShelf {
  /** The name of a text that says what is compared. */
  keyOf(text: string): string;
  get(key: string): Promise<KeptComparison | null>;
  laid(key: string): Promise<Uint8Array | null>;
  put(key: string, kept: KeptComparison, laid: Uint8Array): Promise<void>;
}

export type KeptComparison = Omit<LaidComparison, 'laid'>;
