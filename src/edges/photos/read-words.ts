import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import sharp from 'sharp';
import type { Patch, Pixels, ReadWord } from '../../core/vision/index.ts';

/** Scale at which print of a millimetre is read best by the library, px/mm. */
const READ_PX_PER_MM = 27;
/** Single words anywhere on the picture, in no order (the library's mode 11). */
const SPARSE = '11';
/** Print on boards is capitals and digits. */
const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789';

/** The words printed upright on a region of a picture, px of the picture. Reads with the data that the package brings; nothing is fetched. */
export async function readWords(pixels: Pixels, region: Patch, pxPerMm: number): Promise<ReadWord[]> {
  const cut = wholePixels(region, pixels);
  const times = READ_PX_PER_MM / pxPerMm;
  const { width, height, channels, data } = pixels;
  const picture = await sharp(data, { raw: { width, height, channels } })
    .extract(cut)
    .resize({ width: Math.round(cut.width * times) })
    .greyscale()
    .negate({ alpha: false })
    .png()
    .toBuffer();
  return (await recognised(picture)).map(({ text, sure, box }) => ({
    text,
    sure,
    box: {
      left: cut.left + box.left / times,
      top: cut.top + box.top / times,
      right: cut.left + box.right / times,
      bottom: cut.top + box.bottom / times,
    },
  }));
}

function wholePixels(
  { left, top, right, bottom }: Patch,
  { width, height }: Pixels,
): { left: number; top: number; width: number; height: number } {
  const [x, y] = [Math.max(0, Math.min(width - 1, Math.floor(left))), Math.max(0, Math.min(height - 1, Math.floor(top)))];
  return {
    left: x,
    top: y,
    width: Math.max(1, Math.min(width, Math.ceil(right)) - x),
    height: Math.max(1, Math.min(height, Math.ceil(bottom)) - y),
  };
}

/** What is used of the library, a C++ one as WebAssembly: files in memory and one reader. */
interface Library {
  readonly FS: { writeFile(name: string, bytes: Uint8Array): void };
  readonly TessBaseAPI: new () => {
    Init(folder: null, language: string, engine: number): number;
    SetVariable(name: string, value: string): void;
    SetImageFile(orientation: number, turn: number): number;
    Recognize(monitor: null): number;
    GetTSVText(page: number): string;
    End(): void;
  };
}

/** The engine of the library that reads lines by a recurrent network. */
const BY_LINES = 1;

/** Words with their boxes as the library tells them, one a line, separated by tabs; levels above words are left out. */
async function recognised(picture: Uint8Array): Promise<ReadWord[]> {
  const find = createRequire(import.meta.url);
  const open = find('tesseract.js-core/tesseract-core-simd-lstm.js') as (options: object) => Promise<Library>;
  const library = await open({ print: () => undefined, printErr: () => undefined });
  const data = join(dirname(find.resolve('@tesseract.js-data/eng/package.json')), '4.0.0_best_int/eng.traineddata.gz');
  library.FS.writeFile('eng.traineddata', gunzipSync(await readFile(data)));
  library.FS.writeFile('/input', picture);
  const reader = new library.TessBaseAPI();
  try {
    if (reader.Init(null, 'eng', BY_LINES) !== 0) throw new Error('the data for reading print cannot be loaded');
    reader.SetVariable('tessedit_pageseg_mode', SPARSE);
    reader.SetVariable('tessedit_char_whitelist', LETTERS);
    if (reader.SetImageFile(1, 0) !== 0) throw new Error('the picture cannot be taken over for reading');
    reader.Recognize(null);
    return reader.GetTSVText(0).split('\n').flatMap(wordIn);
  } finally {
    reader.End();
  }
}

/** Columns: level (5 is a word), page, block, paragraph, line, word, left, top, width, height, confidence of 100, text. */
function wordIn(line: string): ReadWord[] {
  const cells = line.split('\t');
  const [left, top, width, height, sure] = cells.slice(6, 11).map(Number) as [number, number, number, number, number];
  if (cells[0] !== '5' || cells[11] === undefined) return [];
  return [{ text: cells[11], sure: sure / 100, box: { left, top, right: left + width, bottom: top + height } }];
}
