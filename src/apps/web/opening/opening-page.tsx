import { useSearchParams } from 'wouter';
import { NO_WAY_WORDS } from '../../../bench/hands/opening-words.ts';
import type { ModelFile } from '../../../bench/models/index.ts';
import type { OpeningView } from '../../../bench/views/index.ts';
import { useModel, useOpening } from '../api/queries.ts';
import { UnitTop } from '../bench/unit-top.tsx';
import { STAGE_WORDS } from '../format/words.ts';
import { Answer } from '../ui/answer.tsx';
import { useTitle } from '../ui/use-title.ts';
import { FastenersSection } from './fasteners-section.tsx';
import { StepCard } from './step-card.tsx';
import { ThereCard } from './there-card.tsx';
import { WaySection } from './way-section.tsx';

const CLOSING = 'stage:closed';

/** One unit is opened to a goal, or closed, step by step. */
export default function OpeningPage({ id }: { readonly id: string }) {
  const [search, setSearch] = useSearchParams();
  const opening = useOpening(id, search.get('to'));
  const pick = (goal: string): void => setSearch({ to: goal }, { replace: true });
  return <Answer query={opening}>{(view) => <WithFile opening={view} pick={pick} />}</Answer>;
}

interface DeskProps {
  readonly opening: OpeningView;
  readonly pick: (goal: string) => void;
}

function WithFile({ opening, pick }: DeskProps) {
  const model = useModel(opening.model_id);
  useTitle(`Opening #${opening.number} ${opening.name}`);
  return (
    <>
      <UnitTop id={opening.item_id} number={opening.number} name={opening.name}>
        {STAGE_WORDS[opening.stage]}
      </UnitTop>
      <Answer query={model}>{({ file }) => <OpeningDesk opening={opening} pick={pick} file={file} />}</Answer>
    </>
  );
}

function OpeningDesk({ opening, pick, file }: DeskProps & { readonly file: ModelFile }) {
  const way = opening.goal === CLOSING ? 'back' : 'in';
  const left = way === 'in' ? opening.steps : opening.back;
  const total = way === 'in' ? opening.done.length + left.length : left.length;
  return (
    <div className="desk">
      <div className="desk-next">
        {opening.done.length === 0 && opening.stage !== 'closed' && (
          <p className="sheet small">
            It was noted as {STAGE_WORDS[opening.stage].toLowerCase()}, but not step by step. Tick what is done already, or go on as you
            are.
          </p>
        )}
        {opening.reached !== 'way' && <p className="sheet">{NO_WAY_WORDS[opening.reached]}</p>}
        {opening.reached === 'way' && left[0] === undefined && <ThereCard opening={opening} close={() => pick(CLOSING)} />}
        {left[0] !== undefined && (
          <StepCard opening={opening} file={file} step={left[0]} way={way} number={total - left.length + 1} of={total} />
        )}
      </div>
      <div className="desk-rest">
        <WaySection opening={opening} onPick={pick} />
        <FastenersSection opening={opening} file={file} />
      </div>
    </div>
  );
}
