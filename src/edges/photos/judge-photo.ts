import type { PhotoJudgement } from '../../bench/ports.ts';
import { align, greyOf, photoQuality } from '../../core/vision/index.ts';
import { pictureLibrary } from './compare-photos.ts';
import { decodePhoto, UndecodedPhoto } from './decode-photo.ts';

/** Longer side at which a pose is measured, px: enough for half a degree, and done in about a second. */
const POSE_PX = 1200;

/** What a photo says of itself, and how the camera stood against the reference. */
export async function judgePhoto(photo: Uint8Array, reference: Uint8Array | null): Promise<PhotoJudgement> {
  try {
    const { pixels } = await decodePhoto(photo, POSE_PX);
    const quality = photoQuality(pixels);
    if (reference === null) return { ok: true, quality, against: null };
    const known = await decodePhoto(reference, POSE_PX);
    const found = align(greyOf(known.pixels), greyOf(pixels), await pictureLibrary());
    return { ok: true, quality, against: found.ok ? { ok: true, pose: found.pose, reference: known.size } : found };
  } catch (error) {
    if (!(error instanceof UndecodedPhoto)) throw error;
    return { ok: false, code: 'photo-corrupt', detail: error.message };
  }
}
