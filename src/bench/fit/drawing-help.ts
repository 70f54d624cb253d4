import { chipMm, chipSizes, familyOf, FitError, landSize, onGrid, type FootDrawing, type PartDrawing } from '../../core/fit/index.ts';

/** Of a chip whose code alone is known: how far its sizes may be off, and the least and most length of its ends, as shares. Common practice, no source. */
const SIZE_SHARE = 0.05;
const ENDS_SHARE = [0.15, 0.35] as const;

const micrometres = (mm: number): number => Math.round(mm * 1000) / 1000;

/** One reading of a code of chip size. */
export interface ChipReading {
  readonly label: string;
  readonly drawing: FootDrawing & Pick<PartDrawing, 'kind' | 'sides' | 'pins' | 'legMm' | 'pegs'>;
}

/** Every part with two ends that a code such as 0603 may mean; none for an unknown code. The length of the ends is a guess, since codes do not tell it. */
export const chipReadings = (code: string): ChipReading[] =>
  chipSizes(code.trim()).map((size) => {
    const [long, wide] = chipMm(size);
    const around = (mm: number) => [micrometres(mm * (1 - SIZE_SHARE)), micrometres(mm * (1 + SIZE_SHARE))] as const;
    return {
      label: `${long} × ${wide} mm, in inches ${size.imperial}, metric ${size.metric}`,
      drawing: {
        kind: 'chip',
        sides: 2,
        pins: 2,
        spanMm: around(long),
        footMm: [micrometres(ENDS_SHARE[0] * long), micrometres(ENDS_SHARE[1] * long)],
        widthMm: around(wide),
        legMm: null,
        pegs: null,
      },
    };
  });

/** The pads that feet on two sides want by IPC-7351B, nominal fillets, as a sentence; null where no goals are published for them or the numbers make none. */
export function wantedPads({ kind, sides, pins, pitchMm, spanMm, footMm, widthMm, legMm }: PartDrawing): string | null {
  const family = familyOf(kind, kind === 'chip' ? spanMm[1] : pins > sides ? pitchMm : Infinity);
  if (family === null || sides === 1 || legMm !== null) return null;
  try {
    const { outerMm, innerMm, acrossMm } = landSize({ spanMm, footMm, widthMm }, family, 'nominal');
    if (!(innerMm > 0)) return null;
    const [outer, inner, across] = [outerMm, innerMm, acrossMm].map((mm) => onGrid(mm).toFixed(2));
    return `By IPC-7351B, level B, these feet want pads ${outer} mm over all, ${inner} mm between them, ${across} mm wide.`;
  } catch (trouble) {
    if (trouble instanceof FitError) return null;
    throw trouble;
  }
}
