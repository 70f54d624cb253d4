/** A forecast that came true or not. */
export interface Forecast {
  /** Chance that was said, 0..1. */
  readonly chance: number;
  readonly came: boolean;
}

/** Mean of (p − y)² over the forecasts, 0 best: one class counted, half of what Brier (1950) summed over both. NaN of none. */
export const brierScore = (forecasts: readonly Forecast[]): number =>
  forecasts.reduce((sum, { chance, came }) => sum + (chance - (came ? 1 : 0)) ** 2, 0) / forecasts.length;

export interface CalibrationBand {
  /** Chances from `low` up to, in the last band with, `high`. */
  readonly low: number;
  readonly high: number;
  readonly count: number;
  /** Mean chance that was said in the band, and share that came true; NaN of an empty band. */
  readonly said: number;
  readonly came: number;
}

export interface BrierSplit {
  readonly score: number;
  /** How far what is said is off what comes, over the bands; 0 best. */
  readonly calibration: number;
  /** How far the bands part what comes from what does not; the more the better. */
  readonly resolution: number;
  /** What the score would be by always saying the mean. */
  readonly uncertainty: number;
  /** What the bands blur: score − (calibration − resolution + uncertainty). */
  readonly withinBands: number;
}

/** Forecasts in `count` bands of equal width, for a reliability diagram. */
export function calibrationBands(forecasts: readonly Forecast[], count = 10): CalibrationBand[] {
  const bandOf = (chance: number): number => Math.min(count - 1, Math.floor(chance * count));
  return Array.from({ length: count }, (_, band) => {
    const inside = forecasts.filter(({ chance }) => bandOf(chance) === band);
    const mean = (of: (forecast: Forecast) => number): number => inside.reduce((sum, each) => sum + of(each), 0) / inside.length;
    return {
      low: band / count,
      high: (band + 1) / count,
      count: inside.length,
      said: mean(({ chance }) => chance),
      came: mean(({ came }) => (came ? 1 : 0)),
    };
  });
}

/** The score split into calibration, resolution and uncertainty. Murphy (1973), equation 9; with the bands' own mean chances something stays within them. */
export function brierSplit(forecasts: readonly Forecast[], count = 10): BrierSplit {
  const bands = calibrationBands(forecasts, count).filter((band) => band.count > 0);
  const all = forecasts.length;
  const came = forecasts.filter((forecast) => forecast.came).length / all;
  const mean = (of: (band: CalibrationBand) => number): number => bands.reduce((sum, band) => sum + (band.count / all) * of(band), 0);
  const score = brierScore(forecasts);
  const calibration = mean((band) => (band.said - band.came) ** 2);
  const resolution = mean((band) => (band.came - came) ** 2);
  const uncertainty = came * (1 - came);
  return { score, calibration, resolution, uncertainty, withinBands: score - (calibration - resolution + uncertainty) };
}
