import { useState } from 'react';
import { postPhotos } from '../api/post-photos.ts';
import { sentenceOf } from '../api/problem-error.ts';
import { ListingPictures } from './listing-pictures.tsx';

interface ListingPhotosProps {
  readonly hashes: readonly string[];
  readonly change: (hashes: readonly string[]) => void;
}

/** As many as an event holds. */
const MOST = 20;

/** Takes the pictures of a listing, saved from its page; they stay on this machine. */
export function ListingPhotos({ hashes, change }: ListingPhotosProps) {
  const [trouble, setTrouble] = useState<readonly string[]>([]);
  const [busy, setBusy] = useState(false);
  const take = async (files: readonly File[]): Promise<void> => {
    if (files.length === 0) return;
    setBusy(true);
    try {
      const results = await postPhotos(files);
      setTrouble(results.flatMap((result) => (result.ok ? [] : [`${result.name}: ${result.message}`])));
      const taken = results.flatMap((result) => (result.ok ? [result.photo.hash] : []));
      change([...new Set([...hashes, ...taken])].slice(0, MOST));
    } catch (error) {
      setTrouble([`Not sent: ${sentenceOf(error)}`]);
    } finally {
      setBusy(false);
    }
  };
  return (
    <div className="listing-photos">
      <div className="actions">
        <label className="button file-button">
          Add its pictures
          <input
            type="file"
            className="sr-only"
            accept="image/jpeg,image/png,image/webp"
            multiple
            disabled={busy}
            onChange={(event) => {
              void take([...(event.currentTarget.files ?? [])]);
              event.currentTarget.value = '';
            }}
          />
        </label>
        {hashes.length > 0 && (
          <button type="button" className="quiet" onClick={() => change([])}>
            Leave them out
          </button>
        )}
      </div>
      <ListingPictures hashes={hashes} />
      {trouble.map((line) => (
        <p key={line} role="alert">
          {line}
        </p>
      ))}
    </div>
  );
}
