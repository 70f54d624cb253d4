import { useEffect, useState } from 'react';
import { photoQuality, type PhotoQuality } from '../../../core/vision/capture/photo-quality.ts';
import type { BoardSide } from '../../../bench/events/index.ts';
import { TROUBLE_WORDS } from '../../../bench/eyes/picture-words.ts';
import type { JudgementView } from '../../../bench/views/index.ts';
import { judgePhoto } from '../api/comparisons.ts';
import { postPhotos } from '../api/post-photos.ts';
import { photoPixels } from '../measured/photo-pixels.ts';

/** What is known of a photo so far: what this device sees at once, and what the bench says of its pose. */
export interface Verdict {
  readonly quality: Pick<PhotoQuality, 'sharpness' | 'brightness' | 'troubles'> | null;
  readonly judged: JudgementView | null;
  /** The bench does not answer, or cannot say. */
  readonly isAlone: boolean;
  /** Null while nothing is known. */
  readonly isGood: boolean | null;
  readonly advice: readonly string[];
}

const NOTHING: Pick<Verdict, 'quality' | 'judged' | 'isAlone'> = { quality: null, judged: null, isAlone: false };

/** Judges one photo: sharpness and light here, its pose against the reference at the bench. */
export function useVerdict(photo: File, modelId: string, side: BoardSide): Verdict {
  const [known, setKnown] = useState(NOTHING);
  useEffect(() => {
    let isCurrent = true;
    const tell = (more: Partial<typeof NOTHING>): void => {
      if (isCurrent) setKnown((before) => ({ ...before, ...more }));
    };
    void photoPixels(photo).then((pixels) => tell({ quality: pixels && photoQuality(pixels) }));
    void judgedThere(photo, modelId, side).then((judged) => tell(judged ? { judged } : { isAlone: true }));
    return () => {
      isCurrent = false;
    };
  }, [photo, modelId, side]);
  return { ...known, ...goodOrNot(known) };
}

/** Null where the bench does not answer or does not take the photo. */
async function judgedThere(photo: File, modelId: string, side: BoardSide): Promise<JudgementView | null> {
  try {
    const [sent] = await postPhotos([photo]);
    return sent?.ok ? await judgePhoto({ photo: sent.photo.hash, model_id: modelId, side }) : null;
  } catch {
    return null;
  }
}

function goodOrNot({ quality, judged }: typeof NOTHING): Pick<Verdict, 'isGood' | 'advice'> {
  if (judged)
    return { isGood: judged.verdict !== 'retake', advice: [...(judged.problem ? [judged.problem.message] : []), ...judged.advice] };
  if (!quality) return { isGood: null, advice: [] };
  return { isGood: quality.troubles.length === 0, advice: quality.troubles.map((trouble) => TROUBLE_WORDS[trouble]) };
}
