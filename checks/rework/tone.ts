/** A tone of an amplitude with harmonics as shares of it, each at a phase of its own. */
export function toneWith(hertz: number, amplitude: number, harmonics: readonly number[], sampleRate: number, count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => {
    const t = (2 * Math.PI * hertz * i) / sampleRate;
    return amplitude * (Math.sin(t + 0.3) + harmonics.reduce((sum, share, k) => sum + share * Math.sin((k + 2) * t + 0.7 * k), 0));
  });
}

/** A WAV file of one channel and 16 bits. */
export function wavOf(samples: Float64Array, sampleRate: number): Uint8Array {
  const bytes = new Uint8Array(44 + 2 * samples.length);
  const view = new DataView(bytes.buffer);
  const word = (at: number, text: string): void => [...text].forEach((letter, i) => view.setUint8(at + i, letter.charCodeAt(0)));
  word(0, 'RIFF');
  view.setUint32(4, 36 + 2 * samples.length, true);
  word(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, sampleRate, true);
  view.setUint32(28, 2 * sampleRate, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  word(36, 'data');
  view.setUint32(40, 2 * samples.length, true);
  samples.forEach((sample, i) => view.setInt16(44 + 2 * i, Math.round(sample * 32_767), true));
  return bytes;
}
