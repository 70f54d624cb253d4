import type { AdviceView, ItemFile } from '../../../bench/views/index.ts';
import { answerCheck } from './answer-check.ts';
import { doRemedy } from './do-remedy.ts';
import { giveUp, grade, list, prove, sell } from './leave-bench.ts';
import { doTransplant, partOut } from './move-assemblies.ts';
import { decide, fileOf, note, percentText, type Workplace } from './workplace.ts';

const MOST_STEPS = 120;
/** The same advice so often in a row brings nothing new: the person says so, and the bench passes it over. */
const PATIENCE = 3;

/** Follows the advice for one unit until there is nothing left to do; every step is said with its reasons. */
export function workOnUnit(place: Workplace, itemId: string): void {
  const { row } = fileOf(place, itemId);
  place.say('');
  place.say(`#${row.number} ${row.name}, bought from ${row.seller}`);
  let last = '';
  let times = 0;
  for (let step = 0; step < MOST_STEPS; step++) {
    const file = fileOf(place, itemId);
    const { advice } = file;
    if (advice.do === 'nothing') return;
    times = advice.id === last ? times + 1 : 1;
    last = advice.id;
    if (times > PATIENCE) decline(place, file);
    else follow(place, file, advice);
  }
  throw new Error(`After ${MOST_STEPS} steps #${row.number} is still not done: the advice goes round in circles.`);
}

function decline(place: Workplace, { row, advice }: ItemFile): void {
  const reason = `done ${PATIENCE} times, and nothing changed`;
  decide(place, `no more of "${advice.headline}"`, [reason]);
  note(place, 'advice-declined', { item_id: row.id, advice: advice.id, reason });
}

function follow(place: Workplace, file: ItemFile, advice: AdviceView): void {
  decide(place, advice.headline, advice.why);
  if (advice.check) return answerCheck(place, file, advice.check);
  if (advice.do === 'transplant') return doTransplant(place, file, advice.remedy!);
  if (advice.remedy) {
    place.say(`    It then works with a chance of ${percentText(advice.remedy.chance)}.`);
    return doRemedy(place, file, advice.remedy);
  }
  FOLLOW[advice.do]?.(place, file, advice);
}

const FOLLOW: Partial<Record<AdviceView['do'], (place: Workplace, file: ItemFile, advice: AdviceView) => void>> = {
  receive: (place, file) => note(place, 'item-received', { item_id: file.row.id, condition: 'as in the listing' }),
  'part-out': partOut,
  leave: giveUp,
  prove,
  grade,
  list,
  sell,
};
