import { useState, type KeyboardEvent } from 'react';
import type { FindingKind, Region } from '../../../bench/events/index.ts';
import { DIFFERENCE_WORDS, FINDINGS_OF } from '../../../bench/eyes/picture-words.ts';
import type { DifferenceView, PhotoQuestion } from '../../../bench/views/index.ts';
import { judgeDifference } from '../actions/judge-difference.ts';
import { nameIn } from '../bench/answer-form.ts';
import { useUnit } from '../bench/unit-context.ts';
import { blockUnder } from '../board/region-draft.ts';
import { chance } from '../format/number.ts';
import { FINDING_KINDS, FINDING_WORDS } from '../format/words.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Pick } from '../ui/pick.tsx';

interface DifferenceCardProps {
  readonly question: PhotoQuestion;
  readonly difference: DifferenceView;
  readonly step: (by: 1 | -1) => void;
  /** To the next one that nothing was said of. */
  readonly onward: () => void;
}

/** What is seen over an area rather than at a part. */
const OVER_AN_AREA: ReadonlySet<FindingKind> = new Set(['residue', 'corrosion', 'dirty', 'burnt']);
/** Regions have at most so many corners. */
const MOST_CORNERS = 60;

/** One difference to be judged: really there, normal for this model, or not sure; by button or by key. */
export function DifferenceCard({ question, difference, step, onward }: DifferenceCardProps) {
  const { model, parts, file } = useUnit();
  const { record, busy } = useRecorder();
  const region = regionOf(question, difference);
  const [place, setPlace] = useState(difference.part ?? (region && blockUnder(parts, region)) ?? '');
  const [sees, setSees] = useState<FindingKind>(FINDINGS_OF[difference.shows][0]!);
  const judge = async (verdict: 'real' | 'normal' | 'not-sure'): Promise<void> => {
    const area = region && OVER_AN_AREA.has(sees) ? { region } : {};
    const placeName = place === difference.part ? place : nameIn(model.blocks, place);
    const real = verdict === 'real' ? { place, placeName, sees, stage: file.stage, ...area } : undefined;
    if (await record(judgeDifference(question, difference, verdict, real))) onward();
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const verdict = { r: 'real', n: 'normal', s: 'not-sure' }[event.key] as 'real' | 'normal' | 'not-sure' | undefined;
    if (!verdict || busy || event.ctrlKey || event.metaKey || event.altKey || event.target instanceof HTMLSelectElement) return;
    if (verdict === 'real' && place === '') return;
    event.preventDefault();
    void judge(verdict);
  };
  return (
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions -- the keys only repeat what its buttons do
    <section className="spot" aria-label={`Difference ${difference.rank}`} onKeyDown={onKeyDown}>
      <div className="spot-head">
        <h3>
          {difference.rank}. {difference.part && `${difference.part}: `}
          {DIFFERENCE_WORDS[difference.shows]}
        </h3>
        <span className="small muted">{chance(difference.chance)} that the boards differ there</span>
      </div>
      <div className="fields">
        <Pick label="Where" options={placesOf(difference.part, model.blocks)} value={place} onChange={setPlace} />
        <Pick label="What it is" options={kindsOf(difference)} value={sees} onChange={(kind) => setSees(kind as FindingKind)} />
      </div>
      <div className="row eyes-verdicts">
        <button type="button" className="main" disabled={busy || place === ''} onClick={() => void judge('real')}>
          Really there <kbd>R</kbd>
        </button>
        <button type="button" disabled={busy} onClick={() => void judge('normal')}>
          Normal for this model <kbd>N</kbd>
        </button>
        <button type="button" disabled={busy} onClick={() => void judge('not-sure')}>
          Not sure <kbd>S</kbd>
        </button>
        <button type="button" className="quiet" onClick={() => step(-1)}>
          One back <kbd>K</kbd>
        </button>
        <button type="button" className="quiet" onClick={() => step(1)}>
          Next <kbd>J</kbd>
        </button>
      </div>
    </section>
  );
}

function placesOf(part: string | null, blocks: readonly { readonly id: string; readonly name: string }[]): { id: string; name: string }[] {
  const own = part === null ? [{ id: '', name: 'Choose where' }] : [{ id: part, name: part }];
  return [...own, ...blocks.map(({ id, name }) => ({ id, name }))];
}

function kindsOf({ shows }: DifferenceView): { id: FindingKind; name: string }[] {
  const first = FINDINGS_OF[shows];
  const rest = FINDING_KINDS.filter((kind) => !first.includes(kind) && kind !== 'nothing-wrong');
  return [...first, ...rest].map((id) => ({ id, name: FINDING_WORDS[id] }));
}

/** The area around a difference, where mm are known. */
function regionOf({ side }: PhotoQuestion, { outline_mm: outline }: DifferenceView): Region | null {
  if (!outline) return null;
  const every = Math.ceil(outline.length / MOST_CORNERS);
  return { side: side === 'board-front' ? 'front' : 'back', polygon: outline.filter((_, i) => i % every === 0) };
}
