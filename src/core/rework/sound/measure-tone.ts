import { ReworkError } from '../rework-error.ts';
import { solveSymmetric } from './solve-symmetric.ts';
import { spectrum } from './spectrum.ts';

export interface Tone {
  readonly hertz: number;
  /** Of the tone itself, dB below a sine that fills the range of the samples (±1). */
  readonly levelDb: number;
  /** Total harmonic distortion as a share and in dB: √(Σ harmonics²) over the tone, of those below half the sampling rate. */
  readonly thd: number;
  readonly thdDb: number;
  /** The same with noise and all else that is not the tone. */
  readonly thdNoiseDb: number;
  /** Amplitude of each harmonic over that of the tone, from the second on. */
  readonly harmonics: readonly number[];
  /** True when samples stand at the ends of their range: what is measured is then the recording, not the unit. */
  readonly clipped: boolean;
}

export type ToneAnswer = { readonly ok: true; readonly tone: Tone } | { readonly ok: false; readonly code: 'silence' | 'no-single-tone' };

const HARMONICS = 10;
const MOST_SAMPLES = 65_536;
const LEAST_SAMPLES = 256;
/** Quieter than this there is nothing to measure, and a tone that holds less of the power than this is not the only one. */
const SILENCE = 1e-5;
const OF_POWER = 0.3;

/**
 * Frequency, level and distortion of one steady tone: a least-squares fit of the tone and its harmonics with the frequency
 * free, as the four-parameter sine fit of IEEE Std 1057, with columns for the harmonics. Samples lie within ±1; of a long
 * recording the middle is taken. Throws `ReworkError` for fewer than 256 samples.
 */
export function measureTone(samples: Float32Array | Float64Array | readonly number[], sampleRate: number): ToneAnswer {
  if (samples.length < LEAST_SAMPLES)
    throw new ReworkError('too-few-samples', `at least ${LEAST_SAMPLES} samples are needed, got ${samples.length}`);
  const from = Math.max(0, (samples.length - MOST_SAMPLES) >> 1);
  const wave = Float64Array.from(samples.slice(from, from + MOST_SAMPLES));
  const mean = wave.reduce((sum, each) => sum + each, 0) / wave.length;
  const power = wave.reduce((sum, each) => sum + (each - mean) ** 2, 0) / wave.length;
  if (power < SILENCE ** 2) return { ok: false, code: 'silence' };
  let omega = strongest(wave, mean);
  let fit = fitHarmonics(wave, omega);
  for (let round = 0; round < 8; round++) {
    omega += fit.turn;
    const before = fit.turn;
    fit = fitHarmonics(wave, omega);
    if (Math.abs(before) * wave.length < 1e-9) break;
  }
  const [own, ...rest] = fit.amplitudes;
  if (!own || own ** 2 / 2 < OF_POWER * power) return { ok: false, code: 'no-single-tone' };
  const harmonics = rest.map((amplitude) => amplitude / own);
  const thd = Math.hypot(...harmonics);
  const other = Math.sqrt(Math.max(0, power - own ** 2 / 2) / (own ** 2 / 2));
  return {
    ok: true,
    tone: {
      hertz: (omega * sampleRate) / (2 * Math.PI),
      levelDb: decibels(own),
      thd,
      thdDb: decibels(thd),
      thdNoiseDb: decibels(other),
      harmonics,
      clipped: wave.filter((each) => Math.abs(each) >= 0.9995).length > 2,
    },
  };
}

/** 20 log₁₀ of an amplitude; −200 for nothing at all. */
export const decibels = (amplitude: number): number => Math.max(-200, 20 * Math.log10(amplitude || 1e-30));

/** Radians a sample of the strongest line, by a Hann window and a parabola through the logarithms at its top. */
function strongest(wave: Float64Array, mean: number): number {
  const n = 2 ** Math.floor(Math.log2(wave.length));
  const windowed = Float64Array.from({ length: n }, (_, i) => (wave[i]! - mean) * (0.5 - 0.5 * Math.cos((2 * Math.PI * i) / n)));
  const lines = spectrum(windowed);
  let top = 1;
  for (let i = 1; i < lines.length - 1; i++) if (lines[i]! > lines[top]!) top = i;
  const [a, b, c] = [lines[top - 1]!, lines[top]!, lines[top + 1]!].map((line) => Math.log(line + 1e-300)) as [number, number, number];
  const curve = a - 2 * b + c;
  return (2 * Math.PI * (top + (curve === 0 ? 0 : (0.5 * (a - c)) / curve))) / n;
}

interface Fit {
  /** Of the tone and its harmonics below half the sampling rate. */
  readonly amplitudes: readonly number[];
  /** What the frequency is off, radians a sample. */
  readonly turn: number;
}

/** Constant, cosine and sine of each harmonic, and how the sum would change with the frequency: a linear fit. */
function fitHarmonics(wave: Float64Array, omega: number): Fit {
  const count = Math.max(1, Math.min(HARMONICS, Math.floor((0.98 * Math.PI) / omega)));
  const first = solve(wave, omega, count, null);
  const tone = first.slice(1);
  const withTurn = solve(wave, omega, count, tone);
  const amplitudes = Array.from({ length: count }, (_, k) => Math.hypot(withTurn[1 + 2 * k]!, withTurn[2 + 2 * k]!));
  return { amplitudes, turn: withTurn[1 + 2 * count]! };
}

/** Normal equations; `tone` adds the column ∂/∂ω of what was fitted before. */
function solve(wave: Float64Array, omega: number, count: number, tone: readonly number[] | null): number[] {
  const size = 1 + 2 * count + (tone ? 1 : 0);
  const normal = new Float64Array(size * size);
  const right = new Float64Array(size);
  const row = new Float64Array(size);
  const middle = (wave.length - 1) / 2;
  for (let i = 0; i < wave.length; i++) {
    const t = i - middle;
    row[0] = 1;
    let slope = 0;
    for (let k = 1; k <= count; k++) {
      const [cos, sin] = [Math.cos(k * omega * t), Math.sin(k * omega * t)];
      row[2 * k - 1] = cos;
      row[2 * k] = sin;
      if (tone) slope += k * t * (tone[2 * k - 1]! * cos - tone[2 * k - 2]! * sin);
    }
    if (tone) row[size - 1] = slope;
    for (let a = 0; a < size; a++) {
      right[a]! += row[a]! * wave[i]!;
      for (let b = 0; b <= a; b++) normal[a * size + b]! += row[a]! * row[b]!;
    }
  }
  return solveSymmetric(normal, right);
}
