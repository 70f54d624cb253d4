import { oddWords } from '../../../bench/netting/index.ts';
import type { ModelCheckView } from '../../../bench/views/index.ts';
import { moneyText } from '../money.ts';
import { percent } from './table.ts';

/** The check of a model, as a person reads it. */
export function checkLines(view: ModelCheckView): string[] {
  const byCircuit = view.functions.filter(({ by }) => by === 'circuit').length;
  return [
    `${view.name}, level ${view.level}: ${byCircuit} of ${view.functions.length} functions follow from its circuit, the others from blocks.`,
    ...faultLines(view),
    ...view.unknown_loads.map(
      ({ rail, volts }) => `Something that is not drawn hangs on ${rail.toUpperCase()} (${volts} V): belief is wide there.`,
    ),
    ...pointLines(view),
    ...view.problems,
    ...view.contradictions.flatMap(({ text, next }) => [text, `  ${next}`]),
    ...view.mismatches.flatMap(({ text, mends }) => [text, ...mends.map((mend) => `  ${mend}`)]),
    ...netlistLines(view),
  ];
}

function faultLines({ faults }: ModelCheckView): string[] {
  if (!faults) return ['Its circuit is not computed yet, so it is not known which faults can be told apart: salvor circuits'];
  return [
    `${faults.count} faults in ${faults.groups} groups that some check tells apart.`,
    ...faults.largest.map(({ name, others }) => `  not told apart: ${name} and ${others} others`),
  ];
}

const pointLines = ({ points, points_for: fails, currency }: ModelCheckView): string[] =>
  points.length === 0
    ? []
    : [
        `Readings of a good board that would help most, for a unit that fails at "${fails}":`,
        ...points.map(
          ({ id, name, minutes, saving_minor: saving }) => `  ${id}  ${name}: saves ${moneyText(saving, currency)}, takes ${minutes} min`,
        ),
      ];

function netlistLines({ compared, odd, mistakes, thought, to_think: toThink }: ModelCheckView): string[] {
  if (compared === 0) return ['No netlist was held against readings of good boards.'];
  if (odd.length === 0) return [`The netlist predicts all ${compared} readings of good boards.`];
  return [
    `${odd.length} of ${compared} readings of good boards are not as the netlist says:`,
    ...odd.map((each) => `  ${oddWords(each)}`),
    ...(mistakes.length === 0 ? ['No single mistake explains them.'] : ['If the netlist is wrong at one place, it is most likely here:']),
    ...mistakes.map(
      ({ net, chance, text, explains, next }) =>
        `  ${net.toUpperCase()} (${percent(chance)}): ${text} That explains ${explains} of them. ${next}`,
    ),
    ...(thought < toThink ? [`Time ran out after ${thought} of ${toThink} mistakes that may be: give it more with --seconds.`] : []),
  ];
}
