import {
  awgDiameter,
  trackCurrent2152,
  trackCurrent2221,
  trackResistance,
  trackWidth2221,
  wireResistance,
  type Layer,
  type Reckoning,
} from '../../core/rework/index.ts';
import { answered, choiceField, numberField, onlyWhen, type Calculator } from './calculator.ts';
import { awgField, currentField, thicknessNote, TRACK_FIELDS, trackOf } from './conductor-fields.ts';

export const TRACK_CURRENT: Calculator = {
  id: 'track-current',
  name: 'What a track carries',
  about: 'How much current a track of a board bears while it warms by so much, and how wide it must be for a current.',
  fields: [
    ...TRACK_FIELDS,
    numberField('rise_k', 'May warm by, K', 10, { min: 1, max: 100 }),
    choiceField('layer', 'Lies', { external: 'outside', internal: 'inside the board' }),
    currentField,
  ],
  reckon: (values) => {
    const [section, rise, layer] = [trackOf(values), values.number('rise_k'), values.text('layer') as Layer];
    return answered(
      [
        { label: 'It carries, by IPC-2221', reckoning: trackCurrent2221(section, rise, layer) },
        { label: 'It carries, by IPC-2152', reckoning: trackCurrent2152(section, rise) },
        {
          label: 'Width for the current, by IPC-2221',
          reckoning: trackWidth2221(values.number('current_a'), rise, section.thicknessM, layer),
        },
      ],
      'The older charts and the newer ones differ: take the lower answer where it is tight.',
      thicknessNote(values),
    );
  },
};

export const RESISTANCE: Calculator = {
  id: 'resistance',
  name: 'Resistance and drop',
  about: 'What a track or a wire resists, what a current loses on it, and what it heats.',
  fields: [
    choiceField('conductor', 'It is', { track: 'a track', wire: 'a round copper wire' }),
    ...onlyWhen('conductor', 'track', TRACK_FIELDS),
    ...onlyWhen('conductor', 'wire', [awgField]),
    numberField('length_mm', 'Length, mm', 50, { max: 100_000 }),
    numberField('celsius', 'Temperature, °C', 25, { min: -50, max: 200 }),
    currentField,
    choiceField('ways', 'The current goes', { 1: 'there', 2: 'there and back' }),
  ],
  reckon: (values) => {
    const [lengthM, celsius] = [values.number('length_mm') * 1e-3, values.number('celsius')];
    const isTrack = values.text('conductor') === 'track';
    const ohms = isTrack
      ? trackResistance({ ...trackOf(values), lengthM }, celsius)
      : wireResistance(awgDiameter(values.number('awg')), lengthM, celsius);
    const [amps, ways] = [values.number('current_a'), Number(values.text('ways'))];
    return answered(
      [
        { label: 'Resistance, one way', reckoning: ohms },
        { label: 'Drop', reckoning: scaledBy(ohms, ways * amps, 'V', 'V = R I') },
        { label: 'Heat', reckoning: scaledBy(ohms, ways * amps ** 2, 'W', 'P = R I²') },
      ],
      ...(isTrack ? [thicknessNote(values)] : []),
      'The wire or track is taken to stay at that temperature; copper resists 0.4 % more for each kelvin.',
    );
  },
};

/** What follows from a resistance in proportion: as uncertain as it is. */
export const scaledBy = (from: Reckoning, factor: number, unit: string, formula: string): Reckoning => ({
  ...from,
  value: from.value * factor,
  low: from.low * factor,
  high: from.high * factor,
  unit,
  formula: `${formula}, ${from.formula}`,
});
