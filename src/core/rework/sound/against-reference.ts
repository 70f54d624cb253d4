import type { Tone } from './measure-tone.ts';

export interface ToneDifference {
  /** How much quieter than the reference, dB; negative where it is louder. */
  readonly quieterDb: number;
  /** Distortion above that of the reference, in points of per cent; never below 0. */
  readonly addedDistortionPercent: number;
  /** How far the tone is off, as a share: a clock or a motor that runs wrong. */
  readonly offPitch: number;
  /** One of the two was recorded too loud: record both again, quieter. */
  readonly clipped: boolean;
}

/** What two tones are compared by. */
type Compared = Pick<Tone, 'hertz' | 'levelDb' | 'thd' | 'clipped'>;

/** A unit's tone against that of a known-good unit of the same model, recorded at the same distance and setting. */
export const againstReference = (unit: Compared, reference: Compared): ToneDifference => ({
  quieterDb: reference.levelDb - unit.levelDb,
  addedDistortionPercent: Math.max(0, unit.thd - reference.thd) * 100,
  offPitch: unit.hertz / reference.hertz - 1,
  clipped: unit.clipped || reference.clipped,
});
