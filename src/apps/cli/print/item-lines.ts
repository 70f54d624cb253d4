import type { BeliefView, ItemFile } from '../../../bench/views/index.ts';
import { moneyText } from '../money.ts';
import { adviceLines } from './advice-lines.ts';
import { percent } from './table.ts';

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
    ...adviceLines(file.advice, money.currency),
  ];
}

/** The likeliest explanations, and what does not fit in. */
export function beliefLines(belief: BeliefView): string[] {
  const sets = belief.hypotheses.slice(0, SHOWN).map((each) => `  ${percent(each.chance).padStart(5)}  ${setName(each)}`);
  const odd = belief.odd.map((each) => `  Does not fit: ${each.text} (${percent(each.chance)} given the rest)`);
  return ['Belief', ...sets, ...odd];
}

/** The faults of a hypothesis in words. */
export function setName(each: BeliefView['hypotheses'][number]): string {
  if (each.unknown) return 'something that is not in the model';
  return each.faults.length === 0 ? 'nothing is wrong' : each.faults.map((fault) => fault.name).join(' and ');
}
