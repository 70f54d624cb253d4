import { runTimeHours } from '../../core/rework/index.ts';
import { answered, choiceField, numberField, onlyWhen, type Calculator } from './calculator.ts';

export const RUN_TIME: Calculator = {
  id: 'run-time',
  name: 'How long a battery lasts',
  about: 'Hours on a full cell, by the current or by the power that the device draws.',
  fields: [
    numberField('capacity_mah', 'Printed on the cell, mAh', 1000, { max: 1e6 }),
    numberField('health_percent', 'Of it is left, %', 100, { max: 100 }),
    choiceField('draws', 'The device draws', { current: 'a current from the cell', power: 'a power behind a converter' }),
    ...onlyWhen('draws', 'current', [numberField('current_ma', 'Current, mA', 150, { max: 1e6 })]),
    ...onlyWhen('draws', 'power', [
      numberField('power_mw', 'Power, mW', 500, { max: 1e6 }),
      numberField('cell_v', 'Cell, V', 3.7, { max: 100 }),
      numberField('efficiency_percent', 'Efficiency of the converter, %', 85, { max: 100 }),
    ]),
  ],
  reckon: (values) => {
    const load =
      values.text('draws') === 'current'
        ? { amps: values.number('current_ma') * 1e-3 }
        : { watts: values.number('power_mw') * 1e-3, efficiency: values.number('efficiency_percent') / 100 };
    const shared = {
      capacityAh: values.number('capacity_mah') * 1e-3,
      health: values.number('health_percent') / 100,
      cellV: values.number('cell_v'),
    };
    return answered([{ label: 'It lasts', reckoning: runTimeHours({ ...shared, load }) }]);
  },
};
