import { NO_WAY_WORDS, orderSentence } from '../../../bench/hands/index.ts';
import type { OpeningStep, OpeningView } from '../../../bench/views/index.ts';
import { cautionLines } from './advice-lines.ts';
import { percent } from './table.ts';

/** The way in and the way back, as a person beside the bench reads it. */
export function openingLines(view: OpeningView): string[] {
  const { steps, back, fasteners } = view;
  if (view.reached !== 'way') return [NO_WAY_WORDS[view.reached], 'Goals:', ...view.goals.map(({ goal, name }) => `  ${goal}  ${name}`)];
  const summary = `${minutes(view.minutes)}, ${view.tool_changes} changes of tool, ${view.turnings} turnings, ${percent(view.risk)} risk of damage`;
  return [
    ...(steps.length === 0 ? ['Nothing more to open.'] : [`${nameOf(view)}: ${summary}`, `  ${orderSentence(view)}`]),
    ...steps.flatMap((step, i) => stepLines(step, i + 1)),
    ...(back.length === 0
      ? []
      : ['Then to close it, each step backwards:', ...back.map((step, i) => `  ${i + 1}. ${step.name}${withWhat(step)}`)]),
    ...fasteners.sets.filter(({ out }) => out > 0).map((set) => `${set.name}: ${set.out} out, ${set.back} back, ${set.on_mat} on the mat`),
    ...fasteners.shopping.map(({ text, count }) => `To buy: ${count} × ${text}`),
  ];
}

const nameOf = ({ goal, goals }: OpeningView): string => goals.find((each) => each.goal === goal)?.name ?? goal;

function stepLines(step: OpeningStep, number: number): string[] {
  const learned = step.times > 0 ? ` (model: ${minutes(step.model_minutes)}; ${step.times} of yours)` : '';
  return [
    `${number}. ${step.name}${withWhat(step)}, ${minutes(step.minutes)}${learned} [${step.id}]`,
    ...cautionLines(step.cautions),
    ...(step.how === '' ? [] : [`  ${step.how}`]),
    ...step.signs.map(({ at_name: at, sees, name }) => `  Look at: ${at}: ${name === '' ? sees.replaceAll('-', ' ') : name}`),
  ];
}

function withWhat({ tool, side, turns, fasteners }: OpeningStep): string {
  const words = [
    tool ?? '',
    side === null ? '' : `${side} up${turns ? ', turn it over' : ''}`,
    fasteners ? `${fasteners.count} × ${fasteners.drive}, ${fasteners.length_mm} mm` : '',
  ].filter((word) => word !== '');
  return words.length === 0 ? '' : ` (${words.join('; ')})`;
}

const minutes = (value: number): string => `${Math.round(value * 10) / 10} min`;
