import { chipSize, readCapacitorCode, readResistorCode, type ChipSize, type CodeReading, type Reckoning } from '../../core/rework/index.ts';
import { answered, choiceField, onlyWhen, refused, type Answer, type Calculator, type Outcome } from './calculator.ts';

const NOTATION_WORDS: Readonly<Record<CodeReading['notation'], string>> = {
  '3-digit': 'three digits',
  '4-digit': 'four digits',
  'letter-for-point': 'a letter for the point',
  'eia-96': 'EIA-96',
  jumper: 'a bridge',
  'capacitor-3-digit': 'three digits, pF',
};

export const PART_CODE: Calculator = {
  id: 'part-code',
  name: 'What the mark on a part says',
  about: 'Three and four digits, letters for the point, EIA-96, tolerance letters, capacitors, and sizes of chips with their trap.',
  fields: [
    choiceField('part', 'It is', { resistor: 'a resistor', capacitor: 'a capacitor', size: 'the size of a chip' }),
    { kind: 'text', id: 'mark', label: 'The mark, or the name of the size', usual: '472' },
    ...onlyWhen('part', 'size', [
      choiceField('system', 'The name is', { unknown: 'not known', imperial: 'in hundredths of an inch', metric: 'in tenths of a mm' }),
    ]),
  ],
  reckon: (values) => {
    const mark = values.text('mark');
    if (values.text('part') === 'size') return sizeOf(mark, values.text('system'));
    const isResistor = values.text('part') === 'resistor';
    const read = isResistor ? readResistorCode(mark) : readCapacitorCode(mark);
    if (!read.ok) return refused('mark', read.why);
    const notes = read.readings.length > 1 ? ['It can be read in more than one way: measure it, or look at its neighbours.'] : [];
    return answered(
      read.readings.map((reading) => asAnswer(reading, isResistor ? 'Ω' : 'F')),
      ...notes,
      ...read.readings.flatMap(({ volts }) => (volts === undefined ? [] : [`The letters before it mean up to ${volts} V (from memory).`])),
    );
  },
};

function asAnswer(reading: CodeReading, unit: 'Ω' | 'F'): Answer {
  const { value, tolerance, toleranceF = 0, notation, why } = reading;
  const off = tolerance === null ? toleranceF : value * tolerance;
  const reckoning: Reckoning = {
    value,
    unit,
    low: value - off,
    high: value + off,
    why: off === 0 ? 'The mark does not say how far off it may be.' : 'As far off as the mark allows when the part is new.',
    formula: why,
    source: notation === 'eia-96' ? 'EIA-96' : 'IEC 60062; EIA-198 for capacitors',
    range: 'parts marked by these standards; makers also use marks of their own',
    inRange: true,
  };
  return { label: `Read as ${NOTATION_WORDS[notation]}`, reckoning };
}

function sizeOf(name: string, system: string): Outcome {
  const found = chipSize(name, system === 'unknown' ? undefined : (system as 'imperial' | 'metric'));
  if (found.ok) return answered([side('Length', found.size.lengthMm, found.size), side('Width', found.size.widthMm, found.size)], OFF_NOTE);
  if (found.code === 'unknown-size')
    return refused('mark', 'No chip of that name is known here. Measure one: a chip of 1.6 × 0.8 mm is a 0603 in inches.');
  const [inch, metric] = [found.asImperial, found.asMetric];
  return refused(
    'system',
    `"${name}" is the name of two chips: ${millimetres(inch)} counted in inches, ${millimetres(metric)} counted in mm. Measure one, and say which is meant.`,
  );
}

const OFF_NOTE = 'Read from its name: makers differ by 0.1 mm, small chips by less.';
const millimetres = ({ lengthMm, widthMm }: ChipSize): string => `${lengthMm} × ${widthMm} mm`;

function side(label: string, mm: number, { imperial, metric }: ChipSize): Answer {
  const off = Math.min(0.2, 0.1 * mm);
  const reckoning: Reckoning = {
    value: mm * 1e-3,
    unit: 'm',
    low: (mm - off) * 1e-3,
    high: (mm + off) * 1e-3,
    why: 'The name is rounded, and makers differ by about a tenth (common practice, no source).',
    formula: `the name: ${imperial} in hundredths of an inch, ${metric} in tenths of a mm`,
    source: 'EIA names and their metric twins',
    range: 'chips with two ends',
    inRange: true,
  };
  return { label, reckoning };
}
