import type { Caution } from '../../../bench/models/index.ts';
import type { AdviceView, ItemFile } from '../../../bench/views/index.ts';
import { answerCheck } from './answer-check.ts';
import { doRemedy } from './do-remedy.ts';
import { giveUp, grade, list, proofAdviceId, prove, sell } from './leave-bench.ts';
import { doTransplant, partOut } from './move-assemblies.ts';
import { sayCautions } from './say-cautions.ts';
import { decide, fileOf, note, percentText, type Workplace } from './workplace.ts';

const MOST_STEPS = 160;
/** What was done so often on one unit without an end to it is not done again; of steps of proof only those that failed count. */
const PATIENCE: Partial<Record<AdviceView['do'], number>> = { remedy: 2, check: 4, prove: 2 };

/** Follows the advice for one unit until there is nothing left to do; every decision is said with its reasons, steps of proof in a row as one. */
export function workOnUnit(place: Workplace, itemId: string): void {
  const { row } = fileOf(place, itemId);
  place.say('');
  place.say(`#${row.number} ${row.name}, bought from ${row.seller}`);
  const times = new Map<string, number>();
  const said = new Set<Caution>();
  let last: AdviceView['do'] = 'nothing';
  for (let step = 0; step < MOST_STEPS; step++) {
    const file = fileOf(place, itemId);
    const { advice } = file;
    if (advice.do === 'nothing') return;
    const before = times.get(advice.id) ?? 0;
    times.set(advice.id, before + (isNewTry(file) ? 1 : 0));
    if (before >= (PATIENCE[advice.do] ?? Infinity)) stop(place, file, before);
    else {
      if (advice.do !== 'prove' || last !== 'prove') decide(place, advice.headline, advice.why);
      sayCautions(place, file, said);
      follow(place, file, advice);
    }
    last = advice.do;
  }
  throw new Error(`After ${MOST_STEPS} steps #${row.number} is still not done: the advice goes round in circles.`);
}

function isNewTry({ advice, proof }: ItemFile): boolean {
  return advice.do !== 'prove' || proof.steps.some((step) => step.outcome === 'fail' && advice.id === proofAdviceId(step.id));
}

/** The person has had enough of this piece of advice; a unit that will not pass its proof is given up. */
function stop(place: Workplace, file: ItemFile, times: number): void {
  const { row, advice } = file;
  if (advice.do === 'prove') {
    decide(place, 'give it up and sell it for parts', [`"${advice.headline}" failed ${times} times, and no work is left to try`]);
    return giveUp(place, file);
  }
  const reason = `done ${times} times without an end to it`;
  decide(place, `not again "${advice.headline}"`, [reason]);
  note(place, 'advice-declined', { item_id: row.id, advice: advice.id, reason });
}

function follow(place: Workplace, file: ItemFile, advice: AdviceView): void {
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
