import type { PhotoRefusal } from '../../bench/ports.ts';
import { claimedKind, pictureKind, type PictureKind } from './picture-kind.ts';

/** Larger files are refused, in bytes: three times what a phone makes at its best. */
export const MAX_BYTES = 40e6;
/** More pixels are refused before anything is decoded: a picture that unpacks to gigabytes is built to hurt. */
export const MAX_PIXELS = 80e6;

export interface Header {
  readonly kind: PictureKind;
  /** Upright, as it will be shown. */
  readonly widthPx: number;
  readonly heightPx: number;
}

type Checked = { readonly ok: true; readonly header: Header } | PhotoRefusal;

/** What the header of a file says, or why it is no photo for the bench. Nothing is decoded. */
export async function checkPhoto(name: string, bytes: Uint8Array): Promise<Checked> {
  const refuse = (code: PhotoRefusal['code'], detail: string): PhotoRefusal => ({ ok: false, code, name, detail });
  if (bytes.length === 0) return refuse('photo-empty', '0 bytes');
  if (bytes.length > MAX_BYTES)
    return refuse('photo-too-large', `${Math.round(bytes.length / 1e6)} MB; up to ${MAX_BYTES / 1e6} MB are taken`);
  const kind = pictureKind(bytes);
  if (!kind) return refuse('photo-not-a-picture', 'its first bytes are those of no kind of picture');
  const claimed = claimedKind(name);
  if (!kind.readable) return refuse('photo-unsupported', kind.mediaType);
  if (claimed && claimed !== kind) return refuse('photo-mislabelled', `named .${claimed.names[0]}, but it holds ${kind.mediaType}`);
  return readHeader(kind, bytes, refuse);
}

async function readHeader(
  kind: PictureKind,
  bytes: Uint8Array,
  refuse: (code: PhotoRefusal['code'], detail: string) => PhotoRefusal,
): Promise<Checked> {
  const tooMany = (width: number, height: number): PhotoRefusal | undefined =>
    width * height > MAX_PIXELS
      ? refuse('photo-too-many-pixels', `${width} × ${height} pixels; up to ${MAX_PIXELS / 1e6} million are taken`)
      : undefined;
  const claimed = pngSize(kind, bytes);
  const refused = claimed && tooMany(claimed.width, claimed.height);
  if (refused) return refused;
  const { default: sharp } = await import('sharp');
  try {
    const { width, height, pageHeight, orientation } = await sharp(bytes, { limitInputPixels: false }).metadata();
    const tall = pageHeight ?? height;
    const bomb = tooMany(width, tall);
    if (bomb) return bomb;
    const lies = (orientation ?? 1) >= 5;
    return { ok: true, header: { kind, widthPx: lies ? tall : width, heightPx: lies ? width : tall } };
  } catch (error) {
    return refuse('photo-corrupt', firstLine(error));
  }
}

const firstLine = (error: unknown): string => (error instanceof Error ? error.message : String(error)).split('\n')[0]!;

/** Size in the first chunk of a PNG, which the library reads only when more of the file is there (PNG, W3C 2003, 11.2.2). */
function pngSize(kind: PictureKind, bytes: Uint8Array): { width: number; height: number } | undefined {
  if (kind.ending !== 'png' || bytes.length < 24) return undefined;
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  return { width: view.getUint32(16), height: view.getUint32(20) };
}
