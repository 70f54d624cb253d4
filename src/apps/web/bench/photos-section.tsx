import { lazy, Suspense, useState } from 'react';
import { Link } from 'wouter';
import { photoUrl } from '../api/post-photos.ts';
import { Section } from '../ui/section.tsx';
import { sideWords } from './side-words.ts';
import { PhotoAdd } from './photo-add.tsx';
import { useUnit } from './unit-context.ts';

const PhotoViewer = lazy(() => import('./photo-viewer.tsx'));

/** The photos of this unit; a tap opens one to look closely. */
export function PhotosSection() {
  const { photos, row } = useUnit().file;
  const page = `/bench/${encodeURIComponent(row.id)}`;
  const [shown, setShown] = useState<number | null>(null);
  const open = shown === null ? undefined : photos[shown];
  return (
    <Section id="photos" title="Photos">
      <PhotoAdd />
      <div className="row">
        <Link className="button" href={`${page}/camera`}>
          Camera for the board
        </Link>
        {photos.some(({ side }) => side === 'board-front' || side === 'board-back') && (
          <Link className="button" href={`${page}/compare`}>
            Compare with a good board
          </Link>
        )}
        {photos.length > 0 && (
          <Link className="button" href={`${page}/measure`}>
            Measure on a photo
          </Link>
        )}
      </div>
      {photos.length > 0 && (
        <ul className="thumbs">
          {photos.map((photo, index) => (
            <li key={photo.event_id}>
              <button type="button" className="thumb" onClick={() => setShown(index)}>
                <img src={photoUrl(photo.hash, 'thumb')} alt={`Number ${index + 1}, look closely:`} loading="lazy" />
                <span className="small">{sideWords(photo.side)}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      {open && (
        <Suspense fallback={<p className="waiting">Opening the photo …</p>}>
          <PhotoViewer key={open.hash} hash={open.hash} title={sideWords(open.side)} close={() => setShown(null)} />
        </Suspense>
      )}
    </Section>
  );
}
