import sharp from 'sharp';
import { comparePhotos } from '../../src/edges/photos/compare-photos.ts';
import { quantile, round, type Figure, type Progress } from './figure.ts';
import { BOARDS, boardCase } from './vision-cases.ts';

const RUNS = 3;

/** A pair of 12 megapixels from bytes to proposals, decoding included. */
export async function speedFigures(progress: Progress): Promise<Figure[]> {
  progress('Timing a pair of 12 megapixels …');
  const pair = await boardCase(BOARDS.measuring[0], 'hand', 7, 'speed');
  const large = async ({ width, height, channels, data }: typeof pair.reference): Promise<Buffer> =>
    sharp(data, { raw: { width, height, channels } }).resize(4000, 3000, { fit: 'fill' }).jpeg({ quality: 92 }).toBuffer();
  const request = { references: [await large(pair.reference)], other: await large(pair.other) };
  const times: number[] = [];
  for (let run = 0; run <= RUNS; run++) {
    const start = performance.now();
    const result = await comparePhotos(request);
    if (!result.ok) throw new Error(`The pair for timing was refused: ${result.code}.`);
    if (run > 0) times.push((performance.now() - start) / 1000);
  }
  return [
    {
      figure: 'vision.pair12mp_s',
      value: round(quantile(times, 0.5)),
      unit: 's',
      target: '≤ 2.5',
      reference: `4000 × 3000 px JPEG both, median of ${RUNS} runs after one to warm up; decoding, alignment, local warp, difference at 1600 px and judgement; peak memory of the process ${round(process.resourceUsage().maxRSS / 1024)} MB, study included; trial in native OpenCV: 2.0 s for ORB and ECC alone`,
    },
  ];
}
