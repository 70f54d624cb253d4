import { useState } from 'react';
import { postPhotos } from '../api/post-photos.ts';
import { sentenceOf } from '../api/problem-error.ts';
import { setBoardPhoto, type BoardMm } from '../actions/set-board-photo.ts';
import { PhotoStage } from '../fit/photo-stage.tsx';
import type { LoadedPhoto } from '../fit/use-photo.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Chips } from '../ui/chips.tsx';
import { NumberField } from '../ui/number-field.tsx';
import { BoardPhotoField } from './board-photo-field.tsx';
import type { Side } from './editor-part.ts';
import {
  beginDraft,
  clicked,
  CORNER_NAMES,
  knownOf,
  marksOf,
  nudgedLast,
  shownOn,
  withoutLast,
  type PhotoDraft,
  type PhotoTool,
} from './photo-draft.ts';
import type { PhotoMarks } from './photo-frame.ts';

/** The photo of one side as the bench keeps it. */
export interface KeptPhoto {
  readonly hash: string;
  readonly marks: PhotoMarks | null;
}

interface PhotoDeskProps {
  readonly modelId: string;
  readonly side: Side;
  /** Size of the board as the model has it. */
  readonly board: BoardMm | null;
  readonly kept: KeptPhoto | null;
  readonly shown: LoadedPhoto | null;
  /** The front, for laying the back under it. */
  readonly front: { readonly shown: LoadedPhoto | null; readonly marks: PhotoMarks | null };
  /** Address of a reference photo of this side that the model has already. */
  readonly reference: string | null;
}

/** One photo of the board: taken in, given its scale, and laid where it belongs. */
export function PhotoDesk(props: PhotoDeskProps) {
  const { modelId, side, board, kept, shown, reference } = props;
  const { record, tell } = useRecorder();
  const set = (hash: string): void => void record(setBoardPhoto(modelId, side, { hash, marks: null }, board));
  const takeReference = async (url: string): Promise<void> => {
    try {
      const picture = await fetch(url);
      const [result] = await postPhotos([
        new File([await picture.blob()], `board-${side}`, { type: picture.headers.get('content-type') ?? '' }),
      ]);
      if (result?.ok) set(result.photo.hash);
      else if (result) tell(`${result.name}: ${result.message}`, 'bad');
    } catch (error) {
      tell(`Not sent: ${sentenceOf(error)}`, 'bad');
    }
  };
  return (
    <div className="form">
      <div className="row">
        <BoardPhotoField label={`photo of the ${side}, taken straight from above`} photo={kept?.hash ?? null} onChange={set} />
        {reference !== null && kept === null && (
          <button type="button" onClick={() => void takeReference(reference)}>
            Use the reference photo
          </button>
        )}
      </div>
      {kept && shown && <MarkedPhoto key={kept.hash} {...props} kept={kept} shown={shown} />}
    </div>
  );
}

const TOOLS: Readonly<Record<Side, readonly { readonly value: PhotoTool; readonly label: string }[]>> = {
  front: [
    { value: 'scale', label: 'Scale' },
    { value: 'corners', label: 'Corners' },
  ],
  back: [
    { value: 'holes', label: 'The same holes' },
    { value: 'scale', label: 'Scale' },
  ],
};
const HOW: Readonly<Record<PhotoTool, string>> = {
  scale: 'Click both ends of a distance that you know, such as a ruler in the picture or the length of the board. The longer, the better.',
  corners: 'Click the lower left, the lower right and the upper left corner of the board: this says how large it is and which way it lies.',
  holes: 'Click the same hole on both photos; two or more, far apart.',
};

type MarkedPhotoProps = PhotoDeskProps & { readonly kept: KeptPhoto; readonly shown: LoadedPhoto };

function MarkedPhoto({ modelId, side, board, kept, shown, front }: MarkedPhotoProps) {
  const { record } = useRecorder();
  const [draft, setDraft] = useState<PhotoDraft>(() => beginDraft(kept.marks));
  const [tool, setTool] = useState<PhotoTool>(side === 'front' ? 'scale' : 'holes');
  const size = [shown.width, shown.height] as const;
  const isPair = tool === 'holes' && side === 'back';
  const stage = (on: Side, photo: LoadedPhoto) => (
    <PhotoStage
      photo={photo}
      marks={shownOn(on, draft, on !== side)}
      title={`The photo of the ${on}`}
      onMark={(spot) => setDraft(clicked(draft, tool, on, spot))}
      onNudge={(by) => setDraft(nudgedLast(draft, tool, on, by))}
      onUndo={() => setDraft(withoutLast(draft, tool))}
    />
  );
  return (
    <>
      <Chips legend="What a click marks" options={TOOLS[side]} value={tool} onChange={setTool} />
      <p className="small muted">{HOW[tool]}</p>
      {tool === 'scale' && (
        <NumberField
          label="Distance between the two points (mm)"
          value={draft.apartMm}
          min={0.1}
          max={2000}
          step="any"
          onChange={(apartMm) => setDraft({ ...draft, apartMm })}
        />
      )}
      {tool === 'corners' && draft.corners.length < CORNER_NAMES.length && (
        <p className="small">Now the {CORNER_NAMES[draft.corners.length]} corner.</p>
      )}
      <div className={isPair ? 'photo-pair' : undefined}>
        {isPair && front.shown && stage('front', front.shown)}
        {stage(side, shown)}
      </div>
      <output className="small">{knownOf(side, draft, size, front.marks)}</output>
      <div className="row">
        <button
          type="button"
          className="main"
          onClick={() => void record(setBoardPhoto(modelId, side, { hash: kept.hash, marks: marksOf(draft, size) }, board))}
        >
          Keep how it lies
        </button>
      </div>
    </>
  );
}
