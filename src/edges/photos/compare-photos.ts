import sharp from 'sharp';
import { compare } from '../../core/vision/difference/compare.ts';
import type { AlignmentRefusal, CompareStep, Comparison, PartPatch, PictureLibrary, Pixels } from '../../core/vision/index.ts';
import { openPictureLibrary } from './picture-library.ts';

/** Longer side, px, at which photos are compared: small soldered parts are some ten px, and a 12 MP pair stays within the minute of nobody. */
export const COMPARED_PX = 1600;
const MAX_PIXELS = 80e6;

/** Photos as they are kept: bytes of JPEG, PNG or WebP. The first reference gives the frame. */
export interface CompareRequest {
  readonly references: readonly Uint8Array[];
  readonly other: Uint8Array;
  /** Known parts, in px of the first reference as it is compared (see `comparedSize`). */
  readonly parts?: readonly PartPatch[];
}

/** A size in px, and what it is multiplied by to become the upright photo's own. */
export interface ComparedSize {
  readonly width: number;
  readonly height: number;
  readonly toOriginal: number;
}

export type PhotoComparison =
  | (Comparison & { readonly reference: ComparedSize; readonly other: ComparedSize })
  | AlignmentRefusal
  | { readonly ok: false; readonly code: 'photo-corrupt'; readonly detail: string };

export interface CompareHooks {
  readonly progress?: (step: CompareStep | 'decoding', share: number) => void;
  readonly shouldStop?: () => boolean;
}

let library: Promise<PictureLibrary> | undefined;

/** Decodes photos, upright and at the size of comparison, and compares them. A photo that cannot be decoded is an answer, not an exception. */
export async function comparePhotos(request: CompareRequest, hooks: CompareHooks = {}): Promise<PhotoComparison> {
  library ??= openPictureLibrary();
  hooks.progress?.('decoding', 0);
  try {
    const photos = await Promise.all([...request.references, request.other].map(decoded));
    const references = photos.slice(0, -1).map(({ pixels }) => pixels);
    const other = photos.at(-1)!;
    const result = compare(references, other.pixels, await library, { ...hooks, ...(request.parts && { parts: request.parts }) });
    return result.ok ? { ...result, reference: photos[0]!.size, other: other.size } : result;
  } catch (error) {
    if (!(error instanceof UndecodedPhoto)) throw error;
    return { ok: false, code: 'photo-corrupt', detail: error.message };
  }
}

class UndecodedPhoto extends Error {}

/** A photo's pixels at the size of comparison. JPEG is shrunk while it is decoded. */
async function decoded(bytes: Uint8Array): Promise<{ pixels: Pixels; size: ComparedSize }> {
  try {
    const photo = sharp(bytes, { failOn: 'error', limitInputPixels: MAX_PIXELS, animated: false });
    const { width = 1, height = 1 } = await photo.metadata();
    const upright = photo.rotate().flatten({ background: '#ffffff' });
    const sized = upright.resize({ width: COMPARED_PX, height: COMPARED_PX, fit: 'inside', withoutEnlargement: true });
    const { data, info } = await sized.toColourspace('srgb').raw().toBuffer({ resolveWithObject: true });
    const toOriginal = Math.max(width, height) / Math.max(info.width, info.height);
    const pixels: Pixels = { width: info.width, height: info.height, channels: info.channels as Pixels['channels'], data };
    return { pixels, size: { width: info.width, height: info.height, toOriginal } };
  } catch (error) {
    throw new UndecodedPhoto(String((error as Error).message ?? error).split('\n')[0]);
  }
}
