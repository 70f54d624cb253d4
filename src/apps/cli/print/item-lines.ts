import type { BeliefView, ItemFile, ProofView } from '../../../bench/views/index.ts';
import { moneyText } from '../money.ts';
import { adviceLines } from './advice-lines.ts';
import { percent, table } from './table.ts';

const SHOWN = 5;

/** One item whole: what it is, what happened, what is believed, and what next. */
export function itemLines(file: ItemFile): string[] {
  const { row, money } = file;
  return [
    `#${row.number} ${row.name} (${file.model.name}, knowledge level ${file.model.level}): ${row.status}`,
    `  id ${row.id}; ${row.lot_title ? `from "${row.lot_title}" of ${row.seller}; ` : ''}${file.stage}; cost ${moneyText(money.cost_minor, money.currency)}, ${money.minutes} min`,
    '',
    'Log',
    ...file.log.map((line) => `  ${line.at.slice(0, 16).replace('T', ' ')}  ${line.text}${line.corrected ? '  (taken back)' : ''}`),
    '',
    ...beliefLines(file.belief),
    '',
    ...(file.proof.steps.length > 0 ? [...proofLines(file.proof), ''] : []),
    ...adviceLines(file.advice, money.currency),
  ];
}

/** The likeliest explanations, and what does not fit in. */
export function beliefLines(belief: BeliefView): string[] {
  const sets = belief.hypotheses.slice(0, SHOWN).map((each) => `  ${percent(each.chance).padStart(5)}  ${setName(each)}`);
  const odd = belief.odd.map((each) => `  ${each.text}`);
  return ['Belief', ...sets, ...odd];
}

/** The steps of the proof by the names that `salvor add proof` takes, and where each stands. */
export const proofLines = ({ steps }: ProofView): string[] => [
  'Proof',
  ...table(
    ['', '', ''],
    steps.map(({ id, name, outcome, reason }) => [`  ${id}`, outcome, reason === '' ? name : `${name}: ${reason}`]),
  ).slice(1),
];

/** The faults of a hypothesis in words. */
export function setName(each: BeliefView['hypotheses'][number]): string {
  if (each.unknown) return 'something that is not in the model';
  return each.faults.length === 0 ? 'nothing is wrong' : each.faults.map((fault) => fault.name).join(' and ');
}
