/** Solder alloys with solidus and liquidus in °C, from a maker's list and a table with the numbers of J-STD-006; sources differ by 3 K for Sn60Pb40. */
export const ALLOYS = {
  Sn63Pb37: { solidusC: 183, liquidusC: 183, family: 'leaded' },
  Sn60Pb40: { solidusC: 183, liquidusC: 191, family: 'leaded' },
  Sn62Pb36Ag2: { solidusC: 179, liquidusC: 179, family: 'leaded' },
  SAC305: { solidusC: 217, liquidusC: 220, family: 'lead-free' },
  'Sn99.3Cu0.7': { solidusC: 227, liquidusC: 227, family: 'lead-free' },
  'Sn96.5Ag3.5': { solidusC: 221, liquidusC: 221, family: 'lead-free' },
  Sn42Bi58: { solidusC: 138, liquidusC: 138, family: 'bismuth' },
  Sn42Bi57Ag1: { solidusC: 139, liquidusC: 140, family: 'bismuth' },
  In52Sn48: { solidusC: 118, liquidusC: 118, family: 'indium' },
  Bi46Sn34Pb20: { solidusC: 96, liquidusC: 96, family: 'bismuth' },
} as const;
export type Alloy = keyof typeof ALLOYS;

export interface WorkTemperatures {
  readonly solidusC: number;
  readonly liquidusC: number;
  /** Of the joint at its hottest: 20 to 40 K above liquidus. Common practice, no source. */
  readonly jointC: readonly [number, number];
  /** Of the tip of an iron, for a fine joint and for one on much copper. Common practice, no source. */
  readonly tipC: readonly [number, number];
  /** Of the air of a hot-air pencil at its mouth. Common practice, no source. */
  readonly airC: readonly [number, number];
  readonly warnings: readonly 'bismuth-and-lead-melt-at-96'[];
}

/**
 * What to set the tools to for an alloy: `mixedWithLead` where leaded solder was on the pads before. A bismuth alloy on it
 * forms a phase that melts at about 96 °C, so that the joint fails in a hot car.
 */
export function workTemperatures(alloy: Alloy, mixedWithLead = false): WorkTemperatures {
  const { solidusC, liquidusC, family } = ALLOYS[alloy];
  const add = (low: number, high: number): [number, number] => [liquidusC + low, liquidusC + high];
  return {
    solidusC,
    liquidusC,
    jointC: add(20, 40),
    tipC: add(100, 150),
    airC: add(80, 160),
    warnings: mixedWithLead && family === 'bismuth' ? ['bismuth-and-lead-melt-at-96'] : [],
  };
}
