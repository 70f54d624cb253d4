import { useState } from 'react';
import { Link } from 'wouter';
import type { BoardSide } from '../../../bench/events/index.ts';
import { UnitPage } from '../bench/bench-page.tsx';
import { PhotoPick } from '../bench/photo-pick.tsx';
import { useUnit } from '../bench/unit-context.ts';
import { UnitTop } from '../bench/unit-top.tsx';
import { Section } from '../ui/section.tsx';
import { Comparison } from './comparison.tsx';
import { ReferencesSection } from './references-section.tsx';

/** Photos of one board against those of good ones. */
export default function ComparePage({ id }: { readonly id: string }) {
  return (
    <UnitPage id={id}>
      <CompareDesk />
    </UnitPage>
  );
}

const isBoard = (side: string): side is BoardSide => side === 'board-front' || side === 'board-back';

function CompareDesk() {
  const { row, photos } = useUnit().file;
  const boards = photos.flatMap(({ hash, side }) => (isBoard(side) ? [{ key: hash, hash, side }] : []));
  const [picked, setPicked] = useState<string | null>(null);
  const photo = boards.find(({ hash }) => hash === picked) ?? boards.at(-1);
  const page = `/bench/${encodeURIComponent(row.id)}`;
  return (
    <>
      <UnitTop id={row.id} number={row.number} name={row.name}>
        A photo of its board against photos of good ones. Nothing that is found here is believed before you say that it is really there.
      </UnitTop>
      <Section id="which-photo" title="Which photo">
        {boards.length === 0 && <p>There is no photo of its board yet.</p>}
        <PhotoPick photos={boards} picked={photo?.hash} onPick={setPicked} />
        <p className="row">
          <Link className="button" href={`${page}/camera`}>
            Take another one
          </Link>
        </p>
      </Section>
      {photo && <Comparison key={photo.hash} question={{ item_id: row.id, photo: photo.hash, side: photo.side }} />}
      {photo && <ReferencesSection key={photo.side} side={photo.side} photo={photo.hash} />}
    </>
  );
}
