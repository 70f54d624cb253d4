import { useEffect, useState } from 'react';
import { photoUrl } from '../api/post-photos.ts';
import type { LoadedPhoto } from '../fit/use-photo.ts';

/** A photo that the bench keeps, with its size in pixels once it is there; null until then, and where there is none. */
export function useKeptPhoto(hash: string | null): LoadedPhoto | null {
  const [loaded, setLoaded] = useState<(LoadedPhoto & { readonly hash: string }) | null>(null);
  useEffect(() => {
    if (hash === null) return undefined;
    const image = new Image();
    const show = (): void => setLoaded({ hash, url: image.src, width: image.naturalWidth, height: image.naturalHeight });
    image.addEventListener('load', show);
    image.src = photoUrl(hash, 'view');
    return () => image.removeEventListener('load', show);
  }, [hash]);
  return loaded?.hash === hash ? loaded : null;
}
