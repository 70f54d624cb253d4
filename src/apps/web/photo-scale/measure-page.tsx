import { useState } from 'react';
import { Link } from 'wouter';
import { photoUrl } from '../api/post-photos.ts';
import { UnitPage } from '../bench/bench-page.tsx';
import { sideWords } from '../bench/side-words.ts';
import { useUnit } from '../bench/unit-context.ts';
import { Section } from '../ui/section.tsx';
import { StockTag } from '../ui/stock-tag.tsx';
import { MeasureDesk } from './measure-desk.tsx';

/** Distances on a photo of a unit: the photo is laid on its board by marks, then two places are tapped. */
export default function MeasurePage({ id }: { readonly id: string }) {
  return (
    <UnitPage id={id}>
      <WhichPhoto />
    </UnitPage>
  );
}

function WhichPhoto() {
  const { row, photos } = useUnit().file;
  const [picked, setPicked] = useState<string | null>(null);
  const photo = photos.find(({ event_id }) => event_id === picked) ?? photos.find(({ side }) => side === 'board-front') ?? photos[0];
  return (
    <>
      <header className="page-head">
        <p className="small">
          <Link href={`/bench/${encodeURIComponent(row.id)}`}>Back to the bench</Link>
        </p>
        <h1>
          <StockTag number={row.number} /> {row.name}
        </h1>
        <p className="small muted">
          Distances and pads on a photo from straight above, or a scan. What stands above the board is seen a little too large.
        </p>
      </header>
      <Section id="measure-photo" title="Which photo">
        {photos.length === 0 && <p>There is no photo of this unit yet.</p>}
        <ul className="thumbs">
          {photos.map(({ event_id, hash, side }, i) => (
            <li key={event_id}>
              <button type="button" className="thumb" aria-pressed={event_id === photo?.event_id} onClick={() => setPicked(event_id)}>
                <img src={photoUrl(hash, 'thumb')} alt={`Number ${i + 1}:`} loading="lazy" />
                <span className="small">{sideWords(side)}</span>
              </button>
            </li>
          ))}
        </ul>
      </Section>
      {photo && (
        <MeasureDesk key={photo.event_id} url={photoUrl(photo.hash, 'view')} seen={photo.side === 'board-back' ? 'back' : 'front'} />
      )}
    </>
  );
}
