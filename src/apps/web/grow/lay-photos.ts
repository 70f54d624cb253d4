import type { LoadedPhoto } from '../fit/use-photo.ts';
import { backFrame, boardSize, frontFrame, type PhotoFrame, type PhotoMarks } from './photo-frame.ts';

export interface LaidPhoto {
  readonly photo: LoadedPhoto;
  readonly lies: PhotoFrame;
}

export interface LaidPhotos {
  readonly front: LaidPhoto | null;
  readonly back: LaidPhoto | null;
  /** Of the board, mm; null while the front has no scale. */
  readonly size: { readonly width_mm: number; readonly height_mm: number } | null;
}

interface Shown {
  readonly shown: LoadedPhoto | null;
  readonly marks: PhotoMarks | null;
}

/** Both photos where they lie on the board; null for one that is not there or does not say enough. */
export function layPhotos(front: Shown, back: Shown): LaidPhotos {
  const lies = front.marks && frontFrame(front.marks);
  if (!front.marks || !lies) return { front: null, back: null, size: null };
  const { width, height } = boardSize(lies, front.marks);
  const under = back.marks && backFrame(lies, back.marks);
  return {
    front: front.shown && { photo: front.shown, lies },
    back: back.shown && under && { photo: back.shown, lies: under },
    size: { width_mm: width, height_mm: height },
  };
}
