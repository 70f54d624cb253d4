import { reckoning, type Reckoning } from '../reckoning.ts';
import { assertPositive } from '../rework-error.ts';

/** Constants of I = k ΔT^b A^c, A in square mil, of IPC-2221; read from two makers' design pages, the standard itself is not open. */
export const IPC_2221 = { external: 0.048, internal: 0.024, b: 0.44, c: 0.725 } as const;
export type Layer = 'external' | 'internal';

/** m² in a square mil. */
const SQUARE_MIL = 25.4e-6 ** 2;

export interface TrackSection {
  readonly widthM: number;
  readonly thicknessM: number;
}

const areaOf = ({ widthM, thicknessM }: TrackSection): number => {
  assertPositive({ widthM, thicknessM });
  return (widthM * thicknessM) / SQUARE_MIL;
};

const RANGE_2221 = 'up to 35 A, 10 mm wide, a rise of 10 to 100 K (range from memory)';
const inRange2221 = (currentA: number, riseK: number, widthM: number): boolean =>
  currentA <= 35 && widthM <= 0.4 * 25.4e-3 && riseK >= 10 && riseK <= 100;

/** What a track carries while it warms by `riseK`, A, after the charts of IPC-2221. */
export function trackCurrent2221(section: TrackSection, riseK: number, layer: Layer): Reckoning {
  assertPositive({ riseK });
  const value = IPC_2221[layer] * riseK ** IPC_2221.b * areaOf(section) ** IPC_2221.c;
  return reckoning(value, [0.2, 0.3], {
    unit: 'A',
    formula: `I = ${IPC_2221[layer]} ΔT^0.44 A^0.725, A in square mil`,
    source: 'IPC-2221, fit to its charts as stated by two makers of parts',
    why: 'A fit to old charts; a plane nearby carries heat away, still air and thin boards do not.',
    range: RANGE_2221,
    inRange: inRange2221(value, riseK, section.widthM),
  });
}

/** Width in m of a track that carries a current at a rise, after IPC-2221. */
export function trackWidth2221(currentA: number, riseK: number, thicknessM: number, layer: Layer): Reckoning {
  assertPositive({ currentA, riseK, thicknessM });
  const area = (currentA / (IPC_2221[layer] * riseK ** IPC_2221.b)) ** (1 / IPC_2221.c);
  const value = (area * SQUARE_MIL) / thicknessM;
  return reckoning(value, [0.3, 0.36], {
    unit: 'm',
    formula: `A = (I / (${IPC_2221[layer]} ΔT^0.44))^(1/0.725), w = A / t`,
    source: 'IPC-2221, fit to its charts as stated by two makers of parts',
    why: 'As much as the current is uncertain, to the power 1/0.725.',
    range: RANGE_2221,
    inRange: inRange2221(currentA, riseK, value),
  });
}

const exponent2152 = (riseK: number): number => 0.84 * riseK ** -0.108 + 1.159;
const factor2152 = (riseK: number): number => 117.555 * riseK ** -0.913 + 1.15;

/** Square mil that carry a current at a rise: a fit to the baseline chart of IPC-2152 (2009), still air and no plane. */
export function trackArea2152(currentA: number, riseK: number): number {
  assertPositive({ currentA, riseK });
  return factor2152(riseK) * currentA ** exponent2152(riseK);
}

/** What IPC-2152 would say of the same track, A, inside or outside: its baseline chart, turned round from `trackArea2152`. */
export function trackCurrent2152(section: TrackSection, riseK: number): Reckoning {
  assertPositive({ riseK });
  const value = (areaOf(section) / factor2152(riseK)) ** (1 / exponent2152(riseK));
  return reckoning(value, [0.15, 0.4], {
    unit: 'A',
    formula: 'A = (117.555 ΔT^−0.913 + 1.15) I^(0.84 ΔT^−0.108 + 1.159), A in square mil',
    source: 'A public fit to the charts of IPC-2152 (2009); the standard gives charts, no formula',
    why: 'A plane below the track lets it carry more, a thin board less; the standard corrects for both, this does not.',
    range: 'a rise of 10 to 100 K, still air, no plane nearby',
    inRange: riseK >= 10 && riseK <= 100,
  });
}
