import sharp from 'sharp';
import type { CompareRequest, FoundDifference, KnownVariation, PartPlace, PhotoComparison } from '../../bench/ports.ts';
import {
  align,
  compare,
  greyOf,
  laidPixels,
  pixelMapOf,
  placeInOther,
  withVariations,
  type Alignment,
  type Comparison,
  type CompareStep,
  type PartPatch,
  type PictureLibrary,
  type Pixels,
  type Proposal,
  type SeenVariation,
} from '../../core/vision/index.ts';
import { decodePhoto, UndecodedPhoto, type DecodedPhoto } from './decode-photo.ts';
import { openPictureLibrary } from './picture-library.ts';

/** Longer side, px, at which photos are compared: small soldered parts are some ten px, and a 12 MP pair stays within the minute of nobody. */
export const COMPARED_PX = 1600;
/** References that are looked at, copies with known variations among them: a 12 MP pair takes 750 MB of memory, each further reference 55 MB (own measurement). */
const MOST_REFERENCES = 5;
/** Copies of the reference that hold known variations. */
const MOST_COPIES = 2;
const LAID_QUALITY = 86;

export interface CompareHooks {
  readonly progress?: (step: CompareStep | 'decoding', share: number) => void;
  readonly shouldStop?: () => boolean;
}

let opened: Promise<PictureLibrary> | undefined;
/** The library, opened with the first photo. */
export const pictureLibrary = (): Promise<PictureLibrary> => (opened ??= openPictureLibrary());

/** Decodes photos, upright and at the size of comparison, and compares them. A photo that cannot be decoded is an answer, not an exception. */
export async function comparePhotos(request: CompareRequest, hooks: CompareHooks = {}): Promise<PhotoComparison> {
  const library = await pictureLibrary();
  hooks.progress?.('decoding', 0);
  try {
    const photos = await Promise.all([...request.references, request.other].map((bytes) => decodePhoto(bytes, COMPARED_PX)));
    const [first] = photos as [DecodedPhoto, ...DecodedPhoto[]];
    const other = photos.at(-1)!;
    const known = photos.slice(0, -1).map(({ pixels }) => pixels);
    const seen = await seenVariations(first.pixels, request.variations ?? [], library, hooks);
    const copies = withVariations(first.pixels, seen, MOST_COPIES);
    const good = known.slice(0, MOST_REFERENCES - copies.length);
    const parts = (request.parts ?? []).map((part) => patchOf(part, first.pixels.width));
    const result = compare([...good, ...copies], other.pixels, library, { ...hooks, parts });
    if (!result.ok) return result;
    return {
      ok: true,
      reference: first.size,
      other: other.size,
      proposals: result.proposals.map((proposal) => foundOf(proposal, result.alignment, other.pixels.width)),
      zones: result.zones,
      pose: result.alignment.pose,
      agreement: result.alignment.agreement,
      used: { references: good.length, variations: seen.length },
      laid: await laidJpeg(result, first.pixels, other.pixels),
    };
  } catch (error) {
    if (!(error instanceof UndecodedPhoto)) throw error;
    return { ok: false, code: 'photo-corrupt', detail: error.message };
  }
}

/** Variations on photos that lie on the reference; one whose photo does not is left out. */
async function seenVariations(
  reference: Pixels,
  variations: readonly KnownVariation[],
  library: PictureLibrary,
  { shouldStop = () => false }: CompareHooks,
): Promise<SeenVariation[]> {
  const grey = greyOf(reference);
  const laid = new Map<Uint8Array, { pixels: Pixels; alignment: Alignment } | null>();
  for (const photo of new Set(variations.map((variation) => variation.photo))) {
    if (shouldStop()) return [];
    const { pixels } = await decodePhoto(photo, COMPARED_PX);
    const alignment = align(grey, greyOf(pixels), library);
    laid.set(photo, alignment.ok ? { pixels, alignment } : null);
  }
  return variations.flatMap(({ photo, outline }) => {
    const found = laid.get(photo);
    return found ? [{ ...found, outline: outline.map(([x, y]) => [x * found.pixels.width, y * found.pixels.width] as const) }] : [];
  });
}

const patchOf = ({ part, x, y, width, height, turnDeg }: PartPlace, scale: number): PartPatch => ({
  part,
  x: x * scale,
  y: y * scale,
  widthPx: width * scale,
  heightPx: height * scale,
  turnDeg,
});

function foundOf({ outline, kind, chance, part }: Proposal, alignment: Alignment, otherWidth: number): FoundDifference {
  const outlineThere = outline.map(([x, y]) => {
    const [u, v] = placeInOther(alignment, x, y);
    return [u / otherWidth, v / otherWidth] as const;
  });
  return { outline, outlineThere, kind, chance, ...(part === undefined ? {} : { part }) };
}

async function laidJpeg({ alignment }: Comparison, reference: Pixels, other: Pixels): Promise<Uint8Array> {
  const { width, height, channels, data } = laidPixels(
    pixelMapOf(alignment.h, alignment.displacement, reference.width, reference.height),
    other,
  );
  return sharp(data, { raw: { width, height, channels } }).jpeg({ quality: LAID_QUALITY }).toBuffer();
}
