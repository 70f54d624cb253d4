import { describe, expect, it } from 'vitest';
import { randomStream } from '../../numeric/index.ts';
import { againstReference } from './against-reference.ts';
import { measureTone } from './measure-tone.ts';
import { readWav } from './read-wav.ts';

const tone = (hertz: number, amplitude: number, count = 8_000) =>
  Float64Array.from({ length: count }, (_, i) => amplitude * Math.sin((2 * Math.PI * hertz * i) / 8_000));

describe('a tone', () => {
  it('that is pure has no distortion to speak of', () => {
    const found = measureTone(tone(440.7, 0.25), 8_000);
    if (!found.ok) throw new Error(found.code);
    expect(found.tone.hertz).toBeCloseTo(440.7, 6);
    expect(found.tone.levelDb).toBeCloseTo(-12.0412, 4);
    expect(found.tone.thdDb).toBeLessThan(-120);
    expect(found.tone.clipped).toBe(false);
  });

  it('that is cut off is told from one that is not', () => {
    const cut = tone(440, 1.4).map((each) => Math.max(-1, Math.min(1, each)));
    const found = measureTone(cut, 8_000);
    expect(found.ok && found.tone.clipped).toBe(true);
    expect(found.ok && found.tone.thd).toBeGreaterThan(0.1);
  });

  it('has only the harmonics that the sampling holds', () => {
    const found = measureTone(tone(1_500, 0.5), 8_000);
    expect(found.ok && found.tone.harmonics).toHaveLength(1);
  });

  it('is not found in silence or in noise', () => {
    const next = randomStream('hiss');
    expect(measureTone(new Float64Array(1_000), 8_000)).toEqual({ ok: false, code: 'silence' });
    expect(
      measureTone(
        Float64Array.from({ length: 8_000 }, () => next() - 0.5),
        8_000,
      ),
    ).toEqual({ ok: false, code: 'no-single-tone' });
  });

  it('needs some samples', () => {
    expect(() => measureTone(new Float64Array(100), 8_000)).toThrow(expect.objectContaining({ code: 'too-few-samples' }));
  });
});

describe('a tone against that of a known-good unit', () => {
  it('is so much quieter, rougher and off pitch', () => {
    const [good, worn] = [
      tone(440, 0.5),
      tone(444.4, 0.25).map((each, i) => each + 0.01 * Math.sin((4 * Math.PI * 444.4 * i) / 8_000)),
    ].map((wave) => measureTone(wave, 8_000));
    if (!good?.ok || !worn?.ok) throw new Error('no tone');
    const found = againstReference(worn.tone, good.tone);
    expect(found.quieterDb).toBeCloseTo(6.0206, 3);
    expect(found.addedDistortionPercent).toBeCloseTo(4, 3);
    expect(found.offPitch).toBeCloseTo(0.01, 6);
    expect(againstReference(good.tone, worn.tone)).toMatchObject({ addedDistortionPercent: 0, clipped: false });
  });
});

/** A WAV file with a chunk before the samples that is to be skipped. */
function wav(
  bits: number,
  format: number,
  channels: number,
  write: (view: DataView, at: number, frame: number, channel: number) => void,
  frames: number,
) {
  const size = (bits / 8) * channels * frames;
  const view = new DataView(new ArrayBuffer(12 + 24 + 8 + 6 + 8 + size));
  const word = (at: number, text: string): void => [...text].forEach((letter, i) => view.setUint8(at + i, letter.charCodeAt(0)));
  word(0, 'RIFF');
  word(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, format, true);
  view.setUint16(22, channels, true);
  view.setUint32(24, 8_000, true);
  view.setUint16(34, bits, true);
  word(36, 'LIST');
  view.setUint32(40, 5, true);
  word(50, 'data');
  view.setUint32(54, size, true);
  for (let i = 0; i < frames; i++) for (let c = 0; c < channels; c++) write(view, 58 + ((i * channels + c) * bits) / 8, i, c);
  return new Uint8Array(view.buffer);
}

describe('a WAV file', () => {
  it.each([
    ['8 bits', wav(8, 1, 1, (view, at) => view.setUint8(at, 192), 4), 0.5],
    ['16 bits', wav(16, 1, 1, (view, at) => view.setInt16(at, -16_384, true), 4), -0.5],
    ['24 bits', wav(24, 1, 1, (view, at) => view.setUint8(at + 2, 0xc0), 4), -0.5],
    ['32 bits', wav(32, 1, 1, (view, at) => view.setInt32(at, 2 ** 30, true), 4), 0.5],
    ['floats', wav(32, 3, 1, (view, at) => view.setFloat32(at, 0.25, true), 4), 0.25],
    ['long floats', wav(64, 3, 1, (view, at) => view.setFloat64(at, 0.125, true), 4), 0.125],
  ])('of %s is read', (_, bytes, value) => {
    const found = readWav(bytes);
    expect(found.ok && [...found.channels[0]!]).toEqual([value, value, value, value]);
    expect(found.ok && found.sampleRate).toBe(8_000);
  });

  it('keeps its channels apart', () => {
    const found = readWav(wav(16, 1, 2, (view, at, _, channel) => view.setInt16(at, channel === 0 ? 8_192 : -8_192, true), 3));
    expect(found.ok && found.channels.map(([first]) => first)).toEqual([0.25, -0.25]);
  });

  it('that is none, or of another kind, is refused', () => {
    expect(readWav(new Uint8Array(50))).toEqual({ ok: false, code: 'not-a-wav' });
    expect(readWav(wav(16, 7, 1, () => undefined, 3))).toEqual({ ok: false, code: 'unsupported-samples' });
    expect(readWav(wav(12, 1, 1, () => undefined, 4))).toEqual({ ok: false, code: 'unsupported-samples' });
    expect(readWav(wav(16, 1, 1, () => undefined, 0))).toEqual({ ok: false, code: 'no-samples' });
  });
});
