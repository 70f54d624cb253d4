import { photoUrl } from '../api/post-photos.ts';
import { sideWords } from './side-words.ts';

interface PhotoPickProps {
  readonly photos: readonly { readonly key: string; readonly hash: string; readonly side: Parameters<typeof sideWords>[0] }[];
  readonly picked: string | undefined;
  readonly onPick: (key: string) => void;
}

/** Photos of a unit, of which one is picked. */
export const PhotoPick = ({ photos, picked, onPick }: PhotoPickProps) => (
  <ul className="thumbs">
    {photos.map(({ key, hash, side }, i) => (
      <li key={key}>
        <button type="button" className="thumb" aria-pressed={key === picked} onClick={() => onPick(key)}>
          <img src={photoUrl(hash, 'thumb')} alt={`Number ${i + 1}:`} loading="lazy" />
          <span className="small">{sideWords(side)}</span>
        </button>
      </li>
    ))}
  </ul>
);
