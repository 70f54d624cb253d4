import { dividerVolts, ledResistor, type Reckoning, type Series } from '../../core/rework/index.ts';
import { scaledText } from '../../core/quantity/index.ts';
import { answered, choiceField, numberField, refused, type Calculator } from './calculator.ts';

export const DIVIDER: Calculator = {
  id: 'divider',
  name: 'Divider',
  about: 'The voltage at the tap of two resistors, with what hangs on it.',
  fields: [
    numberField('in_v', 'Across both, V', 5, { min: -1000, max: 1000 }),
    numberField('upper_ohm', 'From the input to the tap, Ω', 10_000),
    numberField('lower_ohm', 'From the tap to ground, Ω', 10_000),
    numberField('tolerance_percent', 'Each may be off by, %', 1, { min: 0, max: 50 }),
    numberField('load_ohm', 'Hangs on the tap, Ω (0: nothing)', 0, { min: 0 }),
  ],
  reckon: (values) => {
    const load = values.number('load_ohm');
    const divider = {
      inV: values.number('in_v'),
      upper: values.number('upper_ohm'),
      lower: values.number('lower_ohm'),
      tolerance: values.number('tolerance_percent') / 100,
      ...(load > 0 ? { load } : {}),
    };
    return answered([{ label: 'At the tap', reckoning: dividerVolts(divider) }], 'A handheld meter is a load of 10 MΩ.');
  },
};

export const LED: Calculator = {
  id: 'led',
  name: 'Resistor for an LED',
  about: 'The resistor before a light-emitting diode, the next that can be bought, and what it must bear.',
  fields: [
    numberField('supply_v', 'Supply, V', 5, { max: 1000 }),
    numberField('drop_v', 'The LED drops, V', 2, { max: 100 }),
    numberField('current_ma', 'Current, mA', 10, { max: 10_000 }),
    choiceField('series', 'Series', { E12: 'E12', E24: 'E24', E96: 'E96' }),
  ],
  reckon: (values) => {
    const [supply, drop] = [values.number('supply_v'), values.number('drop_v')];
    if (supply <= drop) return refused('supply_v', 'The supply must be above what the LED drops: else it needs a converter.');
    const { exact, ohms, currentA, watts } = ledResistor(supply, drop, values.number('current_ma') * 1e-3, values.text('series') as Series);
    const share = 0.2 / (supply - drop);
    const follows = (value: number, unit: string, formula: string, power: number): Reckoning => ({
      ...exact,
      value,
      unit,
      low: value * Math.max(0, 1 - share) ** power,
      high: value * (1 + share) ** power,
      formula,
    });
    return answered(
      [
        { label: 'Resistor', said: `next in ${values.text('series')}: ${scaledText(ohms, 'Ω')}`, reckoning: exact },
        { label: 'Current with that', reckoning: follows(currentA, 'A', 'I = (V − Vf) / R', 1) },
        { label: 'Heat in it', reckoning: follows(watts, 'W', 'P = I² R', 2) },
      ],
      'Take one that bears twice that heat (common practice, no source).',
    );
  },
};
