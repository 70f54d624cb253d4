import { useState } from 'react';
import { Link } from 'wouter';
import type { BoardSide } from '../../../bench/events/index.ts';
import { photoUrl } from '../api/post-photos.ts';
import { UnitPage } from '../bench/bench-page.tsx';
import { sideWords } from '../bench/side-words.ts';
import { useUnit } from '../bench/unit-context.ts';
import { Section } from '../ui/section.tsx';
import { StockTag } from '../ui/stock-tag.tsx';
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
  const boards = photos.flatMap(({ hash, side }) => (isBoard(side) ? [{ hash, side }] : []));
  const [picked, setPicked] = useState<string | null>(null);
  const photo = boards.find(({ hash }) => hash === picked) ?? boards.at(-1);
  const page = `/bench/${encodeURIComponent(row.id)}`;
  return (
    <>
      <header className="page-head">
        <p className="small">
          <Link href={page}>Back to the bench</Link>
        </p>
        <h1>
          <StockTag number={row.number} /> {row.name}
        </h1>
        <p className="small muted">
          A photo of its board against photos of good ones. Nothing that is found here is believed before you say that it is really there.
        </p>
      </header>
      <Section id="which-photo" title="Which photo">
        {boards.length === 0 && <p>There is no photo of its board yet.</p>}
        <ul className="thumbs">
          {boards.map(({ hash, side }, i) => (
            <li key={hash}>
              <button type="button" className="thumb" aria-pressed={hash === photo?.hash} onClick={() => setPicked(hash)}>
                <img src={photoUrl(hash, 'thumb')} alt={`Number ${i + 1}:`} loading="lazy" />
                <span className="small">{sideWords(side)}</span>
              </button>
            </li>
          ))}
        </ul>
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
