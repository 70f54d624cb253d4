import { askWith } from './ask.ts';

type Spot = readonly [x: number, y: number];

export interface OutlineQuestion {
  readonly px_per_mm: number;
  readonly board: { readonly left_px: number; readonly top_px: number; readonly right_px: number; readonly bottom_px: number };
}

export interface OutlineAnswer {
  readonly kind: 'part' | 'pin-row' | 'test-point' | 'hole';
  readonly chance: number;
  /** What seems to be printed beside it. */
  readonly reference: string | null;
  readonly outline_px: readonly Spot[];
  readonly rows_px: readonly (readonly Spot[])[];
}

/** What a photo that the bench keeps seems to show; px are those of the photo as it came. */
export const askOutlines = async (hash: string, question: OutlineQuestion): Promise<readonly OutlineAnswer[]> =>
  (await askWith<{ outlines: OutlineAnswer[] }>(`/api/photos/${hash}/outlines`, { ...question, read_text: true })).outlines;
