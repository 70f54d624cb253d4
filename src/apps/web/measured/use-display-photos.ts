import { useState } from 'react';
import type { DisplayPhoto } from '../../../bench/sound-and-picture/index.ts';
import { checkDisplay, type DisplayAnswer, type Pixels, type Quad, type Shown } from '../../../core/vision/index.ts';
import { photoPixels } from './photo-pixels.ts';
import type { Place } from './tap-picture.tsx';

/** Fewer dots than this are a slip of the finger. */
const LEAST_DOTS = 8;

/** The photo of a display that is looked at, what was found on it, and what was found on those before. */
export function useDisplayPhotos() {
  const [shows, setShows] = useState<Shown>('white');
  const [dots, setDots] = useState<readonly [string, string]>(['', '']);
  const [pixels, setPixels] = useState<Pixels | null>(null);
  const [corners, setCorners] = useState<readonly Place[]>([]);
  const [answer, setAnswer] = useState<DisplayAnswer | null>(null);
  const [kept, setKept] = useState<readonly DisplayPhoto[]>([]);
  const [trouble, setTrouble] = useState('');
  const judge = (photo: Pixels, at: readonly Place[]): void => {
    const counted = dots.map((text) => Math.round(Number(text)));
    const found = checkDisplay(photo, {
      shows,
      ...(at.length === 4 ? { corners: at as unknown as Quad } : {}),
      ...(counted.every((count) => count >= LEAST_DOTS) ? { dots: [counted[0]!, counted[1]!] as const } : {}),
    });
    setAnswer(found);
    if (found.ok) setCorners(found.corners);
  };
  const take = async (chosen: File | undefined): Promise<void> => {
    const photo = chosen ? await photoPixels(chosen) : null;
    setTrouble(chosen && !photo ? `${chosen.name} cannot be shown here. Save it as JPEG or PNG, and choose it again.` : '');
    setPixels(photo);
    setAnswer(null);
    if (!photo) return;
    // On black nothing shows where the display is: the corners of the photo before stay, as from the same pose.
    const before = shows === 'black' ? corners : [];
    setCorners(before);
    judge(photo, before);
  };
  const tap = (corner: Place): void => {
    const next = corners.length === 4 ? [corner] : [...corners, corner];
    setCorners(next);
    if (pixels && next.length === 4) judge(pixels, next);
  };
  const found = answer?.ok ? answer : null;
  const photos: readonly DisplayPhoto[] = found ? [...kept, { shows, found }] : kept;
  const another = (): void => {
    setKept(photos);
    setAnswer(null);
    setPixels(null);
  };
  return { round: kept.length, shows, setShows, dots, setDots, pixels, corners, answer, found, photos, trouble, judge, take, tap, another };
}
