import { useEffect, useState } from 'react';

/** The size of a picture in px once it is loaded; null before. */
export function useImageSize(url: string): { readonly width: number; readonly height: number } | null {
  const [size, setSize] = useState<{ width: number; height: number } | null>(null);
  useEffect(() => {
    const image = new Image();
    image.addEventListener('load', () => setSize({ width: image.naturalWidth, height: image.naturalHeight }));
    image.src = url;
    return () => setSize(null);
  }, [url]);
  return size;
}
