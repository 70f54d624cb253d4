import { modelIdFor } from '../../../bench/grow/new-model.ts';
import type { Caution, ModelFile } from '../../../bench/models/schema.ts';
import type { Spot } from '../fit/photo-marks.ts';

/** What was done to the device in one step of its opening. */
export type Deed = 'screw' | 'unlatch' | 'unplug' | 'lift';

/** What a person says of a step while they do it. It stays as it is for the next, but for the places. */
export interface StepFields {
  readonly deed: Deed;
  /** Of the screws; it is the tool as well. */
  readonly drive: string;
  readonly lengthMm: number;
  /** Screws that come out, where their places were not tapped on a photo. */
  readonly count: number;
  /** What comes off, comes loose or is lifted; empty for screws. */
  readonly what: string;
  readonly side: 'front' | 'back';
  readonly reaches: '' | 'open' | 'board-out';
  readonly frees: readonly string[];
  readonly cautions: readonly Caution[];
  /** Hash of a photo that shows where; null where there is none. */
  readonly photo: string | null;
  /** Where on the photo, px. */
  readonly places: readonly Spot[];
}

export const FIRST_STEP: StepFields = {
  deed: 'screw',
  drive: 'Cross 00',
  lengthMm: 5,
  count: 4,
  what: '',
  side: 'back',
  reaches: '',
  frees: [],
  cautions: [],
  photo: null,
  places: [],
};

/** Drives that are usual in handheld devices (common practice, no source). */
export const DRIVES = ['Cross 00', 'Cross 000', 'Cross 0', 'Three-point', 'Six-point 5', 'Six-point 6', 'Slot 2 mm'] as const;

/** Minutes of a step as it is taken for granted until it has been timed (common practice, no source). */
const MINUTES = { screw: 0.3, unlatch: 0.5, unplug: 0.5, lift: 0.5 } as const;
const TOOLS = { unlatch: 'Plastic pick', unplug: 'Plastic pick', lift: undefined } as const;
const VERBS = { unlatch: 'Unlatch', unplug: 'Unplug', lift: 'Lift' } as const;

/** How many screws come out: those tapped on the photo, else those counted. */
export const countOf = ({ places, count }: StepFields): number => (places.length > 0 ? places.length : count);

/** The step in words, such as "Take out 4 screws, Cross 00, 5 mm". */
export function stepName(fields: StepFields): string {
  const { deed, drive, lengthMm, what } = fields;
  if (deed !== 'screw') return `${VERBS[deed]} ${what.trim()}`;
  const count = countOf(fields);
  return `Take out ${count} ${count === 1 ? 'screw' : 'screws'}, ${drive.trim()}, ${lengthMm} mm`;
}

/** Whether enough is said for the step to be recorded. */
export const isComplete = ({ deed, drive, lengthMm, what, ...rest }: StepFields): boolean =>
  deed === 'screw' ? drive.trim() !== '' && lengthMm > 0 && countOf({ deed, drive, lengthMm, what, ...rest }) >= 1 : what.trim() !== '';

/** The step, and for screws their set, with names that the model does not have yet; it comes after the last step that was recorded. */
export function recordedStep(fields: StepFields, { steps, fasteners }: Pick<ModelFile, 'steps' | 'fasteners'>) {
  const { deed, drive, lengthMm, side, reaches, frees, cautions, photo, places } = fields;
  const name = stepName(fields);
  const id = modelIdFor(name, (taken) => steps.some((step) => step.id === taken) || fasteners.some((each) => each.id === taken));
  const tool = deed === 'screw' ? drive.trim() : TOOLS[deed];
  const count = countOf(fields);
  const last = steps.at(-1);
  return {
    step: {
      id,
      name,
      side,
      ...(tool === undefined ? {} : { tool }),
      after: last ? [last.id] : [],
      ...(reaches === '' ? {} : { reaches }),
      frees: [...frees],
      minutes: Number((deed === 'screw' ? MINUTES.screw * count : MINUTES[deed]).toFixed(1)),
      cautions: [...cautions],
    },
    ...(deed === 'screw'
      ? { fasteners: { id, name: `Screws, ${drive.trim()}, ${lengthMm} mm`, drive: drive.trim(), length_mm: lengthMm, count } }
      : {}),
    ...(photo === null ? {} : { photo }),
    at: places.map(({ x, y }): [number, number] => [Math.round(x), Math.round(y)]),
  };
}

/** The fields for the next step: the same but for what belongs to the one that was done. */
export const afterStep = (fields: StepFields): StepFields => ({ ...fields, what: '', reaches: '', frees: [], cautions: [], places: [] });
