import { photoUrl } from '../api/post-photos.ts';

/** The pictures of a listing, each opening whole; nothing where there are none. */
export function ListingPictures({ hashes }: { readonly hashes: readonly string[] }) {
  if (hashes.length === 0) return null;
  return (
    <ul className="listing-pictures" aria-label="Pictures of the listing">
      {hashes.map((hash, i) => (
        <li key={hash}>
          <a href={photoUrl(hash, 'view')} target="_blank" rel="noreferrer">
            <img src={photoUrl(hash, 'thumb')} alt={`Listing, ${i + 1} of ${hashes.length}`} loading="lazy" />
          </a>
        </li>
      ))}
    </ul>
  );
}
