import { useState } from 'react';
import { Link } from 'wouter';
import type { BoardSide } from '../../../bench/events/index.ts';
import { referencesOfSide, useReferences } from '../api/comparisons.ts';
import { UnitPage } from '../bench/bench-page.tsx';
import { ACCEPTED } from '../bench/photo-add.tsx';
import { useUnit } from '../bench/unit-context.ts';
import { UnitTop } from '../bench/unit-top.tsx';
import { useSendPhotos } from '../bench/use-send-photos.ts';
import { Pick } from '../ui/pick.tsx';
import { Section } from '../ui/section.tsx';
import { GhostCamera } from './ghost-camera.tsx';
import { TakenPhoto } from './taken-photo.tsx';

/** Takes a photo of a board from where the reference was taken. */
export default function CapturePage({ id }: { readonly id: string }) {
  return (
    <UnitPage id={id}>
      <Capture />
    </UnitPage>
  );
}

const SIDES = [
  { id: 'board-front', name: 'Front of the board' },
  { id: 'board-back', name: 'Back of the board' },
] as const;

function Capture() {
  const { file } = useUnit();
  const { row, model } = file;
  const [side, setSide] = useState<BoardSide>('board-front');
  const references = useReferences(model.id);
  const ghost = references.data ? (referencesOfSide(references.data, side)[0]?.url ?? null) : null;
  const [taken, setTaken] = useState<File | null>(null);
  const { sending, send } = useSendPhotos(row.id);
  const page = `/bench/${encodeURIComponent(row.id)}`;
  const keep = async (): Promise<void> => {
    if (taken && (await send([taken], side))) setTaken(null);
  };
  return (
    <>
      <UnitTop id={row.id} number={row.number} name={row.name} />
      <Section id="camera" title="Photo of the board">
        <Pick label="Side" options={SIDES} value={side} onChange={(to) => setSide(to as BoardSide)} />
        {taken ? (
          <TakenPhoto
            photo={taken}
            ghost={ghost}
            modelId={model.id}
            side={side}
            sending={sending > 0}
            keep={() => void keep()}
            again={() => setTaken(null)}
          />
        ) : (
          <>
            <GhostCamera ghost={ghost} onPhoto={setTaken} />
            <label className="button file-button">
              Choose a photo, or take it with the camera’s own app
              <input
                type="file"
                className="sr-only"
                accept={ACCEPTED}
                onChange={(event) => {
                  setTaken(event.target.files?.[0] ?? null);
                  event.target.value = '';
                }}
              />
            </label>
          </>
        )}
        <p className="row">
          <Link className="button" href={`${page}/compare`}>
            Compare what was taken
          </Link>
        </p>
      </Section>
      <Section id="how-to" title="What makes a good photo">
        <ul className="eyes-advice">
          <li>Square on: hold the camera straight above the middle. The reference shines through, so that you can hold it the same way.</li>
          <li>Daylight, or two lamps from both sides. One lamp alone makes shadows and highlights that look like faults.</li>
          <li>Let the board fill the picture, the same way round as the reference.</li>
          <li>
            Best of all is a flatbed scanner at 600 dpi, where the parts are low enough to come near the glass: it has no perspective.
          </li>
        </ul>
      </Section>
    </>
  );
}
