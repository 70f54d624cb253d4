import { reckoning, type Reckoning } from '../reckoning.ts';
import { assertPositive } from '../rework-error.ts';

/** Copper in air, current in A over diameter in inches to the power 3/2. W. H. Preece, Proc. Royal Society, 1880s. */
const PREECE_COPPER = 10_244;
/** Kelvin at which copper would have no resistance, below 0 °C, and where it melts. */
const COPPER_ZERO_C = 234;
const MELTING_C = 1083;
/** m² of one circular mil. */
const CIRCULAR_MIL = (Math.PI / 4) * 25.4e-6 ** 2;

/** The steady current that melts a bare round copper wire in free air, A: I = 10244 d^1.5, d in inches. */
export function preeceFusing(diameterM: number): Reckoning {
  assertPositive({ diameterM });
  return reckoning(PREECE_COPPER * (diameterM / 25.4e-3) ** 1.5, [0.3, 0.3], {
    unit: 'A',
    formula: 'I = 10244 d^1.5, d in inches',
    source: 'W. H. Preece, Proc. Royal Society, 1880s',
    why: 'Melting, not a rating: insulation, boards and solder give up at a fraction of it, and ends and length carry heat away.',
    range: 'bare round copper in still air, 0.05 to 2 mm, reached after seconds to minutes',
    inRange: diameterM >= 0.05e-3 && diameterM <= 2e-3,
  });
}

/**
 * The current that melts copper of a cross-section in m² within so many seconds, A, when no heat leaves it:
 * I = A √(log₁₀(1 + (Tm − Ta) / (234 + Ta)) / (33 t)), A in circular mils.
 */
export function onderdonkFusing(sectionM2: number, seconds: number, ambientC = 25): Reckoning {
  assertPositive({ sectionM2, seconds, 'kelvin above −234 °C': ambientC + COPPER_ZERO_C, 'kelvin to melting': MELTING_C - ambientC });
  const rise = Math.log10(1 + (MELTING_C - ambientC) / (COPPER_ZERO_C + ambientC));
  return reckoning((sectionM2 / CIRCULAR_MIL) * Math.sqrt(rise / (33 * seconds)), [0.1, 0.2], {
    unit: 'A',
    formula: 'I = A √(log₁₀(1 + (1083 − Ta) / (234 + Ta)) / (33 t)), A in circular mils',
    source: 'I. M. Onderdonk, in E. R. Stauffacher, General Electric Review, 1928',
    why: 'No cooling is counted, so that it melts later than this says; the longer it takes, the more so.',
    range: 'up to 10 s',
    inRange: seconds <= 10,
  });
}
