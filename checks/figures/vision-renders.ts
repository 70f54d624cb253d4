import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { courtOf, openStudio, seenAt, takePhoto, type PlantedFault } from '../../scripts/render-boards/index.mjs';
import { randomStream } from '../../src/core/numeric/index.ts';
import type { PartPatch, Pixels } from '../../src/core/vision/index.ts';
import type { Progress } from './figure.ts';
import type { PairCase } from './vision-cases.ts';
import type { Box } from './vision-defects.ts';
import { photosOf, type BoardPlan, type PhotoPlan } from './vision-render-set.ts';

const SOURCES = ['../../scripts/render-boards/', '../../scripts/demo-photos/'].map((path) => fileURLToPath(new URL(path, import.meta.url)));

/** Where drawn photos wait for the next run: in the machine's folder for passing things, apart for each state of the renderer. */
function cacheFolder(): string {
  const hash = createHash('sha256');
  for (const folder of SOURCES)
    for (const file of readdirSync(folder).sort()) if (file.endsWith('.mjs')) hash.update(readFileSync(join(folder, file)));
  const folder = join(tmpdir(), `salvor-renders-${hash.digest('hex').slice(0, 12)}`);
  mkdirSync(folder, { recursive: true });
  return folder;
}

const fileOf = (folder: string, plan: PhotoPlan): string => {
  const { name, ...rest } = plan;
  return join(folder, `${name.replaceAll(' ', '-')}-${createHash('sha256').update(JSON.stringify(rest)).digest('hex').slice(0, 8)}.jpg`);
};

/** Draws what is not drawn yet; false where there is no Chromium to draw with. */
export async function drawRenders(plans: readonly BoardPlan[], progress: Progress): Promise<boolean> {
  const folder = cacheFolder();
  const wanted = plans.flatMap(photosOf).filter((plan) => !existsSync(fileOf(folder, plan)));
  if (wanted.length === 0) return true;
  const studio = await openStudio();
  if (!studio) return false;
  for (const [i, plan] of wanted.entries()) {
    if (i % 10 === 0) progress(`Drawing photos of boards, ${i} of ${wanted.length} …`);
    const jpeg = await takePhoto(studio, { ...plan, random: randomStream(`photo ${plan.name}`) });
    const file = fileOf(folder, plan);
    writeFileSync(`${file}.part`, jpeg);
    renameSync(`${file}.part`, file);
  }
  await studio.close();
  return true;
}

/** Where a photo that was drawn lies. */
export const renderedFile = (plan: PhotoPlan): string => fileOf(cacheFolder(), plan);

/** What is true of a drawn photo, for a file: lengths in mm on the board, places in the photo in px. */
export const truthOf = (plan: PhotoPlan): object => ({
  board: plan.board.name,
  camera: plan.camera,
  lamps: plan.lamps,
  parts: patchesIn(plan),
  faults: plan.faults.map((each) => ({
    fault: each.fault,
    kind: each.kind,
    ref: each.ref,
    corners_mm: each.corners,
    box_px: boxIn(plan, each),
  })),
});

/** A drawn photo, decoded. */
export async function renderedPixels(plan: PhotoPlan): Promise<Pixels> {
  const { data, info } = await sharp(renderedFile(plan)).raw().toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, channels: 3, data: new Uint8Array(data) };
}

/** The known parts of a photo, where a placement that was registered on the bare board puts them. */
export function patchesIn({ board, camera }: PhotoPlan): PartPatch[] {
  return board.parts.map((part) => {
    const [x, y] = seenAt(camera, [part.x, part.y, 0]);
    const [ex, ey] = seenAt(camera, [part.x + 1, part.y, 0]);
    const pxPerMm = Math.hypot(ex - x, ey - y);
    const [w, h] = courtOf(part.kind);
    return {
      part: part.ref,
      x,
      y,
      widthPx: w * pxPerMm,
      heightPx: h * pxPerMm,
      turnDeg: part.turn + (Math.atan2(ey - y, ex - x) * 180) / Math.PI,
    };
  });
}

/** The box of a fault in a photo, px: all the room it takes, as the camera sees it. */
export function boxIn({ camera }: PhotoPlan, { corners }: PlantedFault): Box {
  const seen = corners.map((corner) => seenAt(camera, corner));
  const [xs, ys] = [seen.map(([x]) => x), seen.map(([, y]) => y)];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

/** A drawn pair: the suspect's faults as boxes in the reference. */
export async function renderedCase(reference: PhotoPlan, other: PhotoPlan): Promise<PairCase> {
  return {
    name: `${other.name} on ${reference.name}`,
    reference: await renderedPixels(reference),
    other: await renderedPixels(other),
    truth: other.faults.map((fault) => ({ box: boxIn(reference, fault), kind: fault.kind })),
  };
}
