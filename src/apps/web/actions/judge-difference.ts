import type { Body, FindingKind, Region, Stage } from '../../../bench/events/index.ts';
import { DIFFERENCE_WORDS } from '../../../bench/eyes/picture-words.ts';
import type { DifferenceView, PhotoQuestion } from '../../../bench/views/index.ts';
import type { Gesture } from './gesture.ts';
import { recordFinding } from './record-finding.ts';

export interface RealDifference {
  readonly place: string;
  readonly placeName: string;
  readonly sees: FindingKind;
  readonly stage: Stage;
  readonly region?: Region;
}

type Verdict = Body<'difference-judged'>['verdict'];

const SAID: Readonly<Record<Verdict, string>> = { real: 'really there', normal: 'normal for this model', 'not-sure': 'not sure' };

/** What the person says of a difference. A real one is a finding at a place, too. */
export function judgeDifference(question: PhotoQuestion, difference: DifferenceView, verdict: Verdict, real?: RealDifference): Gesture {
  const { outline_photo: outline, shows, chance, part } = difference;
  const judged = {
    kind: 'difference-judged' as const,
    body: { ...question, outline, shows, verdict, chance, ...(part === null ? {} : { part }) },
  };
  const said = `${part ?? `difference ${difference.rank}`}, ${DIFFERENCE_WORDS[shows]}: ${SAID[verdict]}`;
  if (!real) return { said, drafts: [judged] };
  const finding = recordFinding({ itemId: question.item_id, minutes: 0, stageNeeded: 'board-out', ...real });
  return { said: finding.said, drafts: [...finding.drafts, judged] };
}
