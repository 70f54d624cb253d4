import type { ComparedSize, PhotoJudgement } from '../../bench/ports.ts';
import { align, greyOf, photoQuality } from '../../core/vision/index.ts';
import { COMPARED_PX, pictureLibrary } from './compare-photos.ts';
import { decodePhoto, UndecodedPhoto } from './decode-photo.ts';

/** Longer side at which sharpness and light are judged, px. */
const QUALITY_PX = 1200;
/** Longer side at which a pose is measured, px: the angle is the same to 0.02° as at 1200 px, in half the time (own measurement on four poses). */
const POSE_PX = 700;

/** What a photo says of itself, and how the camera stood against the reference. */
export async function judgePhoto(photo: Uint8Array, reference: Uint8Array | null): Promise<PhotoJudgement> {
  try {
    const quality = photoQuality((await decodePhoto(photo, QUALITY_PX)).pixels);
    if (reference === null) return { ok: true, quality, against: null };
    const [known, other] = await Promise.all([decodePhoto(reference, POSE_PX), decodePhoto(photo, POSE_PX)]);
    const found = align(greyOf(known.pixels), greyOf(other.pixels), await pictureLibrary());
    return { ok: true, quality, against: found.ok ? { ok: true, pose: found.pose, reference: asCompared(known.size) } : found };
  } catch (error) {
    if (!(error instanceof UndecodedPhoto)) throw error;
    return { ok: false, code: 'photo-corrupt', detail: error.message };
  }
}

/** The size at which a photo that was decoded smaller would be compared. */
function asCompared({ width, height, toOriginal }: ComparedSize): ComparedSize {
  const up = Math.min(toOriginal, COMPARED_PX / Math.max(width, height));
  return { width: Math.round(width * up), height: Math.round(height * up), toOriginal: toOriginal / up };
}
