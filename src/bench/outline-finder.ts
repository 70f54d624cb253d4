import type { OutlineAnswer, Patch, ProposedOutline } from '../core/vision/index.ts';

/** What stands on a board by one photo, asked with the photo's scale. Px are those of the upright photo as it was sent. */
export interface OutlineQuestion {
  readonly pxPerMm: number;
  /** Where the board lies in the photo; the whole photo where nothing is said. */
  readonly board?: Patch;
  readonly leastChance?: number;
  /** Whether print beside parts is read as their references; it takes some seconds more. */
  readonly readsText?: boolean;
}

/** An outline with the reference that seems to be printed beside it. */
export type NamedOutline = ProposedOutline & { readonly reference: string | null };

export type PhotoOutlines =
  | { readonly ok: true; readonly outlines: readonly NamedOutline[] }
  | Extract<OutlineAnswer, { readonly ok: false }>
  | { readonly ok: false; readonly code: 'photo-corrupt'; readonly detail: string };

/** Finds parts, rows of pins, test points and holes on photos, beside the program's own work. */
export interface OutlineFinder {
  /** `cancel` ends the search; `done` then says `stopped`. */
  propose(photo: Uint8Array, question: OutlineQuestion): { readonly done: Promise<PhotoOutlines>; cancel(): void };
  close(): Promise<void>;
}
