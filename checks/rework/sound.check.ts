import { describe, expect, it } from 'vitest';
import { randomStream } from '../../src/core/numeric/index.ts';
import { measureTone, readWav } from '../../src/core/rework/index.ts';
import { toneWith, wavOf } from './tone.ts';

/** The truth is what the wave was made of: amplitudes of its harmonics, by the definition of distortion. See SOURCE.md. */
describe('distortion of waves with known harmonics', () => {
  it.each([
    ['of 1 % in the second', 1000, [0.01]],
    ['of 3 % and 2 % and 1 %', 997, [0.03, 0.02, 0.01]],
    ['of 0.1 % in the third', 440, [0, 0.001]],
    ['of a square wave cut after the ninth', 523.25, [0, 1 / 3, 0, 1 / 5, 0, 1 / 7, 0, 1 / 9]],
    ['at a low tone that ends anywhere', 61.3, [0.05, 0.02]],
  ])('%s is found to 0.01 dB', (_, hertz, harmonics) => {
    const wave = toneWith(hertz, 0.5, harmonics, 48_000, 48_000);
    const found = measureTone(wave, 48_000);
    if (!found.ok) throw new Error(found.code);
    const truth = 20 * Math.log10(Math.hypot(...harmonics));
    expect(Math.abs(found.tone.thdDb - truth)).toBeLessThan(0.01);
    expect(Math.abs(found.tone.hertz / hertz - 1)).toBeLessThan(1e-6);
    expect(Math.abs(found.tone.levelDb - 20 * Math.log10(0.5))).toBeLessThan(0.01);
  });

  it('is found to 0.01 dB in a WAV of 16 bits, with what rounding adds', () => {
    const wave = toneWith(1000, 0.8, [0.02, 0.01], 44_100, 44_100);
    const wav = readWav(wavOf(wave, 44_100));
    if (!wav.ok) throw new Error(wav.code);
    const found = measureTone(wav.channels[0]!, wav.sampleRate);
    expect(found.ok && Math.abs(found.tone.thdDb - 20 * Math.log10(Math.hypot(0.02, 0.01)))).toBeLessThan(0.01);
  });

  it('keeps noise out of the harmonics and in the sum of both', () => {
    const next = randomStream('noise');
    const wave = toneWith(1000, 0.5, [0.01], 48_000, 48_000).map((each) => each + 0.02 * (next() - 0.5));
    const found = measureTone(wave, 48_000);
    if (!found.ok) throw new Error(found.code);
    const noise = (0.02 / Math.sqrt(12) / (0.5 / Math.SQRT2)) ** 2;
    expect(Math.abs(found.tone.thdDb + 40)).toBeLessThan(0.3);
    expect(Math.abs(found.tone.thdNoiseDb - 10 * Math.log10(noise + 1e-4))).toBeLessThan(0.1);
  });
});
