import { onderdonkFusing, preeceFusing, sectionOf, wireFor, wireResistance, type WireChoice } from '../../core/rework/index.ts';
import { answered, numberField, refused, type Calculator, type Outcome, type Values } from './calculator.ts';
import { awgField, currentField, diameterOf } from './conductor-fields.ts';
import { scaledBy } from './tracks.ts';

/** What a wire beside others gets warm to at most, °C. Common practice, no source. */
const WARM_C = 60;

const BECAUSE: Readonly<Record<WireChoice['because'], string>> = {
  drop: 'A thinner one would lose more than is allowed.',
  density: 'A thinner one would carry more than 6 A/mm², and get warm where it lies against others (common practice, no source).',
  thinnest: 'It is the thinnest that is handled with ease; the current would allow a thinner one.',
};

export const WIRE_GAUGE: Calculator = {
  id: 'wire',
  name: 'Wire for a net',
  about: 'The thinnest wire that carries the current of a net, loses no more than allowed and stays cool.',
  fields: [
    currentField,
    numberField('length_mm', 'Length of the wire, mm', 60, { max: 10_000 }),
    numberField('drop_mv', 'May lose, mV', 20, { max: 10_000 }),
  ],
  reckon: wireOf,
};

function wireOf(values: Values): Outcome {
  const [currentA, lengthM] = [values.number('current_a'), values.number('length_mm') * 1e-3];
  const choice = wireFor({ currentA, lengthM, dropV: values.number('drop_mv') * 1e-3, celsius: WARM_C });
  if (!choice)
    return refused('drop_mv', 'No wire from AWG 40 to 18 does it: allow more drop, take a shorter way, or two wires side by side.');
  const ohms = wireResistance(choice.diameterM, lengthM, WARM_C);
  const said = `AWG ${choice.awg}, ${mm(choice.diameterM)} of bare copper`;
  return answered(
    [
      { label: 'Drop on it', said, reckoning: scaledBy(ohms, currentA, 'V', 'V = R I') },
      { label: 'Resistance', reckoning: ohms },
      { label: 'Melts in free air at', reckoning: preeceFusing(choice.diameterM) },
    ],
    BECAUSE[choice.because],
    `${choice.ampsPerMm2.toFixed(1)} A/mm²; ${choice.fusingMargin.toFixed(0)} times the current would melt it.`,
    'Insulated wire is thicker outside: mind screws and edges.',
  );
}

const mm = (metres: number): string => `${(metres * 1e3).toFixed(2)} mm`;

export const FUSING: Calculator = {
  id: 'fusing',
  name: 'When a wire melts',
  about: 'How far a current is from melting a wire, in free air and within seconds.',
  fields: [
    awgField,
    currentField,
    numberField('seconds', 'For, s', 1, { max: 10 }),
    numberField('ambient_c', 'Around it, °C', 25, { min: -50, max: 200 }),
  ],
  reckon: (values) => {
    const diameterM = diameterOf(values);
    const steady = preeceFusing(diameterM);
    const short = onderdonkFusing(sectionOf(diameterM), values.number('seconds'), values.number('ambient_c'));
    const margin = steady.value / values.number('current_a');
    return answered(
      [
        { label: 'Steady current that melts it', reckoning: steady },
        { label: 'Current that melts it in that time', reckoning: short },
      ],
      `The current is ${margin >= 1 ? `${margin.toFixed(1)} times below` : 'above'} what melts it. Below 5 times is too near: insulation, solder and boards give up long before (common practice, no source).`,
    );
  },
};
