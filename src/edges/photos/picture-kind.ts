/** Kinds of picture by their first bytes; those without `ending` can be named but not read here. */
export interface PictureKind {
  readonly mediaType: string;
  readonly ending: string;
  /** Endings of names that rightly stand before such bytes. */
  readonly names: readonly string[];
  readonly readable: boolean;
}

const JPEG: PictureKind = { mediaType: 'image/jpeg', ending: 'jpg', names: ['jpg', 'jpeg', 'jpe', 'jfif'], readable: true };
const PNG: PictureKind = { mediaType: 'image/png', ending: 'png', names: ['png', 'apng'], readable: true };
const WEBP: PictureKind = { mediaType: 'image/webp', ending: 'webp', names: ['webp'], readable: true };
const HEIC: PictureKind = { mediaType: 'image/heic', ending: 'heic', names: ['heic', 'heif', 'hif'], readable: false };
const OTHERS: PictureKind = { mediaType: 'image/*', ending: '', names: ['gif', 'tif', 'tiff', 'bmp', 'avif', 'svg'], readable: false };

const ascii = (bytes: Uint8Array, from: number, to: number): string => String.fromCharCode(...bytes.subarray(from, to));
const HEIC_BRANDS = /^(heic|heix|heim|heis|hevc|hevx|mif1|msf1)$/;

/** The kind of picture by its first bytes (JFIF/EXIF, PNG, RIFF WebP, ISO base media), or undefined for anything else. */
export function pictureKind(bytes: Uint8Array): PictureKind | undefined {
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return JPEG;
  if (ascii(bytes, 0, 8) === '\x89PNG\r\n\x1a\n') return PNG;
  if (ascii(bytes, 0, 4) === 'RIFF' && ascii(bytes, 8, 12) === 'WEBP') return WEBP;
  if (ascii(bytes, 4, 8) === 'ftyp' && HEIC_BRANDS.test(ascii(bytes, 8, 12))) return HEIC;
  if (/^(GIF8|II\*\0|MM\0\*|BM)/.test(ascii(bytes, 0, 4)) || ascii(bytes, 4, 12) === 'ftypavif') return OTHERS;
  return undefined;
}

/** The kind that a name claims by its ending; undefined for an ending that claims nothing. */
export function claimedKind(name: string): PictureKind | undefined {
  const ending = /\.([a-z0-9]+)$/i.exec(name)?.[1]?.toLowerCase() ?? '';
  return [JPEG, PNG, WEBP, HEIC, OTHERS].find(({ names }) => names.includes(ending));
}
