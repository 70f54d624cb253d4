import type { ChargeSample, Gap } from './sample.ts';

export interface Charge {
  /** A h into the cell and out of it, gaps counted straight from edge to edge. */
  readonly inAh: number;
  readonly outAh: number;
  /** How far off the net may be: what the gaps leave open, and an offset of the meter over the whole time. */
  readonly unsureAh: number;
  /** Of `inAh` and `outAh`, what was in gaps. */
  readonly inGapsAh: number;
}

/** A cheap meter's offset, A: over 24 h it adds 24 mAh. Common practice, no source. */
const OFFSET_A = 0.001;

/** Q = Σ I Δt by trapezia, A h. In a gap the current lay between those at its edges: half their difference is unsure. */
export function countCharge(samples: readonly ChargeSample[], gaps: readonly Gap[], offsetA = OFFSET_A): Charge {
  const missing = new Set(gaps.map(({ row }) => row));
  let [inAh, outAh, unsureAh, inGapsAh] = [0, 0, 0, 0];
  for (let i = 1; i < samples.length; i++) {
    const [a, b] = [samples[i - 1]!, samples[i]!];
    const hours = (b.seconds - a.seconds) / 3600;
    const charge = ((a.amps + b.amps) / 2) * hours;
    if (charge > 0) inAh += charge;
    else outAh -= charge;
    unsureAh += offsetA * hours;
    if (!missing.has(i)) continue;
    inGapsAh += Math.abs(charge);
    unsureAh += (Math.abs(a.amps - b.amps) / 2) * hours;
  }
  return { inAh, outAh, unsureAh, inGapsAh };
}
