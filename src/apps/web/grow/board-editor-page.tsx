import { useMemo, useState } from 'react';
import { Link } from 'wouter';
import type { ModelFile } from '../../../bench/models/schema.ts';
import type { BoardMarks } from '../../../bench/views/board-marks.ts';
import { useBoardMarks, useModel, type ModelPage } from '../api/queries.ts';
import { Answer } from '../ui/answer.tsx';
import { Chips } from '../ui/chips.tsx';
import { Fold } from '../ui/fold.tsx';
import { Section } from '../ui/section.tsx';
import { modelTitle } from '../ui/model-options.ts';
import { useTitle } from '../ui/use-title.ts';
import { BoardEditor, type BoardEditorProps } from './board-editor.tsx';
import { ConnectDesk } from './connect-desk.tsx';
import { CopyLink } from './growth-head.tsx';
import { layPhotos } from './lay-photos.ts';
import { PhotoDesk, type KeptPhoto } from './photo-desk.tsx';
import { useKeptPhoto } from './use-kept-photo.ts';
import { WalkDesk } from './walk-desk.tsx';

/** The picture of a board of a model that grows on the bench: its photos, the parts on it, and what joins them. */
export default function BoardEditorPage({ id }: { readonly id: string }) {
  const model = useModel(id);
  const marks = useBoardMarks(id);
  useTitle(model.data ? `Board of ${model.data.file.name}` : 'Board');
  return (
    <Answer query={model}>
      {(page) => (
        <>
          <header className="page-head">
            <p className="small">
              <Link href={`/models/${encodeURIComponent(id)}`}>{modelTitle(page.file)}</Link>
            </p>
            <h1>Board picture</h1>
          </header>
          <Answer query={marks}>{(answer) => (answer.grows ? <BoardDesk page={page} marks={answer} /> : <OfFolder id={id} />)}</Answer>
        </>
      )}
    </Answer>
  );
}

const OfFolder = ({ id }: { readonly id: string }) => (
  <p>
    This model stands in files of the folder models. Its board can be marked on a copy. <CopyLink id={id} />
  </p>
);

const kept = (photo: BoardMarks['front']): KeptPhoto | null => {
  if (photo === null) return null;
  const { size, scale, corners, mirror } = photo;
  const spot = ([x, y]: readonly [number, number]) => ({ x, y });
  const pairs = mirror.map((pair) => ({ front: spot(pair.front), back: spot(pair.back) }));
  const marks = size && {
    size,
    scale: scale && { from: spot(scale.from), to: spot(scale.to), mm: scale.mm },
    corners: corners.map(spot),
    pairs,
  };
  return { hash: photo.photo, marks };
};

function BoardDesk({ page: { file, photos }, marks }: { readonly page: ModelPage; readonly marks: BoardMarks }) {
  const front = useMemo(() => kept(marks.front), [marks.front]);
  const back = useMemo(() => kept(marks.back), [marks.back]);
  const frontShown = useKeptPhoto(front?.hash ?? null);
  const backShown = useKeptPhoto(back?.hash ?? null);
  const laid = layPhotos({ shown: frontShown, marks: front?.marks ?? null }, { shown: backShown, marks: back?.marks ?? null });
  const board = file.board ?? laid.size;
  const reference = (side: string): string | null => photos.find((photo) => photo.side === `board-${side}`)?.url ?? null;
  const of = { modelId: file.id, board: sizeOf(file), front: { shown: frontShown, marks: front?.marks ?? null } };
  return (
    <>
      <Section id="photos" title="Photos">
        <Fold title={laid.front ? 'Front: it lies on the board' : 'Front'} open={laid.front === null}>
          <PhotoDesk {...of} side="front" kept={front} shown={frontShown} reference={reference('front')} />
        </Fold>
        <Fold title={laid.back ? 'Back: it lies under the front' : 'Back'}>
          <PhotoDesk {...of} side="back" kept={back} shown={backShown} reference={reference('back')} />
        </Fold>
      </Section>
      {board ? (
        <Works file={file} board={board} laid={laid} marks={marks} />
      ) : (
        <p className="muted">Take in a photo of the front and set its scale: then parts can be marked on it.</p>
      )}
    </>
  );
}

const WORKS = [
  { value: 'parts', label: 'Mark parts' },
  { value: 'connections', label: 'Probe connections' },
  { value: 'readings', label: 'Measure a good board' },
] as const;

/** What is done on the picture: one thing at a time, each with the whole picture. */
function Works(props: BoardEditorProps) {
  const [work, setWork] = useState<(typeof WORKS)[number]['value']>('parts');
  return (
    <>
      <Chips legend="What you do on the picture" options={WORKS} value={work} onChange={setWork} />
      {work === 'parts' && <BoardEditor {...props} />}
      {work === 'connections' && <ConnectDesk {...props} />}
      {work === 'readings' && <WalkDesk {...props} />}
    </>
  );
}

const sizeOf = ({ board }: ModelFile) => board ?? null;
