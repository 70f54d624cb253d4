import { randomStream } from '../../src/core/numeric/index.ts';
import { measureTone } from '../../src/core/rework/index.ts';
import { toneWith } from '../rework/tone.ts';
import { round, type Figure, type Progress } from './figure.ts';

const WAVES = 60;
const RATE = 48_000;

/** Distortion of waves whose harmonics are known, at random tones, levels and shares. */
export function toneFigures(progress: Progress): Figure[] {
  progress('Measuring tones …');
  const next = randomStream('measured tones');
  let [thd, level] = [0, 0];
  for (let i = 0; i < WAVES; i++) {
    const hertz = 60 * 40 ** next();
    const amplitude = 0.05 + 0.8 * next();
    const harmonics = Array.from({ length: 1 + Math.floor(5 * next()) }, () => 10 ** (-4 + 3 * next()));
    const found = measureTone(toneWith(hertz, amplitude, harmonics, RATE, RATE / 2), RATE);
    if (!found.ok) throw new Error(`no tone at ${hertz} Hz`);
    thd = Math.max(thd, Math.abs(found.tone.thdDb - 20 * Math.log10(Math.hypot(...harmonics))));
    level = Math.max(level, Math.abs(found.tone.levelDb - 20 * Math.log10(amplitude)));
  }
  const reference = `largest error of ${WAVES} waves of half a second, 60 to 2400 Hz, one to five harmonics of 0.01 to 10 %; of the level ${round(level)} dB`;
  return [{ figure: 'hands.thd_error_db', value: round(thd), unit: 'dB', target: '≤ 0.01', reference }];
}
