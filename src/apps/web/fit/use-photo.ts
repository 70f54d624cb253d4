import { useEffect, useState } from 'react';

/** A picture that is loaded and can be shown. */
export interface LoadedPhoto {
  readonly url: string;
  readonly width: number;
  readonly height: number;
}

/** A photo from this device; let go of when another is loaded or the page is left. */
export function usePhoto(): {
  readonly photo: LoadedPhoto | null;
  readonly trouble: string | null;
  readonly load: (file: File | undefined) => void;
} {
  const [photo, setPhoto] = useState<LoadedPhoto | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => () => URL.revokeObjectURL(photo?.url ?? ''), [photo]);
  const load = (file: File | undefined): void => {
    if (!file) return;
    const url = URL.createObjectURL(file);
    const image = new Image();
    image.addEventListener('load', () => {
      setTrouble(null);
      setPhoto({ url, width: image.naturalWidth, height: image.naturalHeight });
    });
    image.addEventListener('error', () => {
      URL.revokeObjectURL(url);
      setPhoto(null);
      setTrouble(`${file.name} cannot be shown. Choose a JPEG, PNG or WebP.`);
    });
    image.src = url;
  };
  return { photo, trouble, load };
}
