import { createContext, useContext } from 'react';
import type { sourceOfPlaces } from '../../../bench/grow/place-source.ts';
import type { GrowthView, PooledPointView } from '../../../bench/views/index.ts';

/** How the model of the page grew, and where each place of it comes from. */
export interface Growth {
  readonly growth: GrowthView;
  readonly points: readonly PooledPointView[];
  readonly sourceOf: ReturnType<typeof sourceOfPlaces>;
}

/** Null for a model of the folder, in which nothing is inherited or told here. */
export const GrowthContext = createContext<Growth | null>(null);

export const useGrown = (): Growth | null => useContext(GrowthContext);
