import { againstReference, type Tone } from '../../core/rework/index.ts';
import type { TestValue } from '../events/index.ts';
import { verdictByScale } from './verdict-by-scale.ts';
import type { TestSaid } from '../logs/index.ts';

const NAMES = { level: 'Level', frequency: 'Frequency', distortion: 'Distortion' } as const;

type Reference = Pick<Tone, 'hertz' | 'levelDb' | 'thd' | 'clipped'>;

/** The tone of a known-good unit, from the numbers that were noted of it; null where they are not all there. */
export function referenceTone(values: readonly TestValue[]): Reference | null {
  const of = (name: string): number | undefined => values.find((value) => value.name === name)?.value;
  const [levelDb, hertz, percent] = [of(NAMES.level), of(NAMES.frequency), of(NAMES.distortion)];
  if (levelDb === undefined || hertz === undefined || percent === undefined) return null;
  return { levelDb, hertz, thd: percent / 100, clipped: false };
}

/** A pitch off by more than this share is a clock or a motor that runs wrong. Common practice, no source. */
const OFF_PITCH = 0.01;

/** A measured tone as a test: by itself its numbers, against the reference unit of the model a verdict too. */
export function soundTest(tone: Tone, reference: Reference | null, knownGood: boolean): TestSaid {
  const round = (value: number, digits: number): number => Number(value.toFixed(digits));
  const values: TestValue[] = [
    { name: NAMES.level, value: round(tone.levelDb, 2), unit: 'dB' },
    { name: NAMES.frequency, value: round(tone.hertz, 2), unit: 'Hz' },
    { name: NAMES.distortion, value: round(100 * tone.thd, 3), unit: '%' },
  ];
  if (tone.clipped)
    return { verdict: 'not-known', text: 'Recorded too loud: what is measured is the recording. Record it again, quieter.', values };
  if (knownGood) return { verdict: 'good', text: 'The tone of a unit that is known to be well.', values };
  if (!reference)
    return {
      verdict: 'not-known',
      text: 'No unit of this model that is known to be well was recorded yet, so there is nothing to compare with.',
      values,
    };
  const { quieterDb, addedDistortionPercent, offPitch } = againstReference(tone, reference);
  const compared = { sound: Math.max(0, round(quieterDb, 1)), distortion: round(addedDistortionPercent, 2) };
  const louder = quieterDb < 0 ? `${round(-quieterDb, 1)} dB louder` : `${round(quieterDb, 1)} dB quieter`;
  const pitch = Math.abs(offPitch) > OFF_PITCH;
  const byScale = verdictByScale(compared);
  return {
    verdict: pitch && byScale === 'good' ? 'suspect' : byScale,
    text: `${louder} than the reference unit, distortion ${compared.distortion} % above it, pitch off by ${round(100 * offPitch, 2)} %.`,
    values: [
      ...values,
      { name: 'Quieter than the reference', value: compared.sound, unit: 'dB', criterion: 'sound' },
      { name: 'Distortion above the reference', value: compared.distortion, unit: '%', criterion: 'distortion' },
    ],
  };
}
