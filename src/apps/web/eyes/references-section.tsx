import { useState } from 'react';
import type { BoardCorners, BoardSide } from '../../../bench/events/index.ts';
import { SIDE_NAMES } from '../../../bench/eyes/picture-words.ts';
import { setReference } from '../actions/set-reference.ts';
import { referencesOfSide, useReferences } from '../api/comparisons.ts';
import { useUnit } from '../bench/unit-context.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Answer } from '../ui/answer.tsx';
import { Section } from '../ui/section.tsx';
import { CornersTool } from './corners-tool.tsx';

interface ReferencesSectionProps {
  readonly side: BoardSide;
  /** The photo of this unit that is compared. */
  readonly photo: string;
}

type Reference = ReturnType<typeof referencesOfSide>[number];

/** Photos of good boards of this model: which are compared with, whether this one is one of them, and where the board lies on the first. */
export function ReferencesSection({ side, photo }: ReferencesSectionProps) {
  const { file, model } = useUnit();
  const references = useReferences(file.model.id);
  return (
    <Section id="references" title="Photos of good boards">
      <p className="small muted">
        The first gives the frame. More of them teach what may differ between good boards: another maker’s parts, labels, light. Choose
        photos of boards that are known to work, of the same revision.
      </p>
      <Answer query={references}>
        {(view) => (
          <Chosen
            key={side}
            modelId={file.model.id}
            hasSize={model.board !== undefined}
            side={side}
            photo={photo}
            list={referencesOfSide(view, side)}
          />
        )}
      </Answer>
    </Section>
  );
}

interface ChosenProps extends ReferencesSectionProps {
  readonly modelId: string;
  readonly hasSize: boolean;
  readonly list: readonly Reference[];
}

function Chosen({ modelId, hasSize, side, photo, list }: ChosenProps) {
  const { record, busy } = useRecorder();
  const [marking, setMarking] = useState<Reference | null>(null);
  const set = (of: string, use: boolean, corners?: BoardCorners): Promise<boolean> =>
    record(setReference({ modelId, side, photo: of, use, ...(corners ? { corners } : {}) }));
  if (marking)
    return (
      <CornersTool
        url={marking.url}
        back={side === 'board-back'}
        done={async (corners) => {
          if (await set(marking.photo, true, corners)) setMarking(null);
        }}
        leave={() => setMarking(null)}
      />
    );
  return (
    <>
      <ul className="thumbs">
        {list.map((each, i) => (
          <li key={each.photo} className="eyes-reference">
            <img src={each.url} alt={`Good board number ${i + 1}, ${SIDE_NAMES[side]}`} loading="lazy" />
            <span className="small">{each.photo === 'shipped' ? 'Comes with the model' : 'Chosen here'}</span>
            {hasSize && (
              <button type="button" disabled={busy} onClick={() => setMarking(each)}>
                {each.corners ? 'Mark its corners anew' : 'Mark its corners'}
              </button>
            )}
            <button type="button" disabled={busy} onClick={() => void set(each.photo, false)}>
              Do not compare with it
            </button>
          </li>
        ))}
      </ul>
      {list.length === 0 && <p>There is none for the {SIDE_NAMES[side]} yet.</p>}
      <div className="row">
        {!list.some((each) => each.photo === photo) && (
          <button type="button" disabled={busy} onClick={() => void set(photo, true)}>
            This board is good: compare others with this photo
          </button>
        )}
        {!list.some((each) => each.photo === 'shipped') && <ShippedAgain side={side} use={() => void set('shipped', true)} />}
      </div>
    </>
  );
}

/** Offers the photo that the model comes with again, where there is one. */
function ShippedAgain({ side, use }: { readonly side: BoardSide; readonly use: () => void }) {
  const { shipped } = useUnit();
  if (!shipped.some((each) => each.side === side)) return null;
  return (
    <button type="button" onClick={use}>
      Compare with the photo of the model again
    </button>
  );
}
