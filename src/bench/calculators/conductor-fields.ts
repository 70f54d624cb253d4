import { awgDiameter, foilThickness, FOILS, type Foil } from '../../core/rework/index.ts';
import { choiceField, numberField, type Field, type Values } from './calculator.ts';

/** The copper of a track: how wide, how many ounces, and what an ounce is taken to be. */
export const TRACK_FIELDS: readonly Field[] = [
  numberField('width_mm', 'Width, mm', 0.3, { min: 0.05, max: 50 }),
  numberField('copper_oz', 'Copper, ounces a square foot', 1, { min: 0.1, max: 10 }),
  choiceField('ounce', 'An ounce is taken', Object.fromEntries(Object.entries(FOILS).map(([id, { text }]) => [id, text]))),
];

/** Width and thickness of such a track, m. */
export const trackOf = (values: Values): { readonly widthM: number; readonly thicknessM: number } => ({
  widthM: values.number('width_mm') * 1e-3,
  thicknessM: foilThickness(values.number('copper_oz'), values.text('ounce') as Foil),
});

/** "34.2 µm by mass, copper of 8.93 g/cm³": what the thickness was taken to be, which moves the answer by up to 2.4 %. */
export const thicknessNote = (values: Values): string =>
  `Copper taken as ${(trackOf(values).thicknessM * 1e6).toFixed(1)} µm thick (${FOILS[values.text('ounce') as Foil].text}); conventions differ by 2.4 %.`;

export const awgField = numberField('awg', 'Gauge, AWG (0 to 50)', 30, { min: 0, max: 50 });
export const diameterOf = (values: Values): number => awgDiameter(values.number('awg'));

/** The current of the net; left to the person where no circuit knows it. */
export const currentField = numberField('current_a', 'Current, A', 0.5, { max: 1000 });
