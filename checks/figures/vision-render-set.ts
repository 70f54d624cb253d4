import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import {
  boardOfPlacement,
  cameraOver,
  plantFaults,
  randomBoard,
  type BoardCamera,
  type CameraPose,
  type PlantedFault,
  type RenderedBoard,
  type RoomLamps,
} from '../../scripts/render-boards/index.mjs';
import { randomStream, type RandomStream } from '../../src/core/numeric/index.ts';

/** A photo to be drawn; its name says all, as it seeds all that is drawn in it. */
export interface PhotoPlan {
  readonly name: string;
  readonly board: RenderedBoard;
  readonly faults: readonly PlantedFault[];
  readonly camera: BoardCamera;
  readonly lamps: RoomLamps;
}

/** All photos of one board: known-good ones as by a guided hand, suspects from the same pose and from anywhere, and the same on a scanner. */
export interface BoardPlan {
  readonly board: RenderedBoard;
  readonly references: readonly PhotoPlan[];
  readonly guided: readonly PhotoPlan[];
  readonly clean: readonly PhotoPlan[];
  readonly free: readonly PhotoPlan[];
  readonly scanReference: PhotoPlan;
  readonly scans: readonly PhotoPlan[];
}

const SIZE = { width: 1400, height: 1050 };
export const RENDERED_FAULTS = 6;
/** How many photos of each kind a board has. */
const COUNTS = {
  tuning: { references: 2, guided: 2, clean: 1, free: 3, scans: 1 },
  measuring: { references: 5, guided: 3, clean: 2, free: 3, scans: 3 },
};
/** Random boards by number: to learn from, of each colour of mask; and others to measure on. */
const RANDOM_BOARDS = { tuning: [1, 2, 3, 4, 5, 10], measuring: [1, 2] };

/** The graded set by seed. Tuning has random boards only; measuring has the two invented boards of the demo that have placements, and two other random ones. */
export const renderPlans = (part: 'tuning' | 'measuring'): BoardPlan[] => boardsOf(part).map((board) => planOf(board, part));

function boardsOf(part: 'tuning' | 'measuring'): RenderedBoard[] {
  const drawn = RANDOM_BOARDS[part].map((number) => randomBoard(`${part} ${number}`, randomStream(`board ${part} ${number - 1}`)));
  if (part === 'tuning') return drawn;
  return [shipped('tern-tn20', 'TERN TN-20', 'blue', 70, 55), shipped('corrie-cp4', 'CORRIE CP-4', 'ochre', 72, 55), ...drawn];
}

function shipped(id: string, name: string, mask: string, width: number, height: number): RenderedBoard {
  const placement = readFileSync(fileURLToPath(new URL(`../../models/${id}/placement.csv`, import.meta.url)), 'utf8');
  return boardOfPlacement({ name, placement, width, height, mask, random: randomStream(`tracks ${id}`) });
}

function planOf(board: RenderedBoard, part: 'tuning' | 'measuring'): BoardPlan {
  const random = randomStream(`plan ${board.name}`);
  const counts = COUNTS[part];
  const lamps: RoomLamps = { angleDeg: 360 * random(), count: random() < 0.5 ? 1 : 2, warmth: 2 * random() - 1 };
  const base = 2 * random();
  const guided = (): CameraPose => ({
    ...poseWithin(1.5, 3, random),
    bend: 0.004 * (2 * random() - 1),
    fill: 0.78 + 0.04 * random() + base * 0.01,
  });
  const free = (): CameraPose => ({ ...poseWithin(15, 20, random), bend: 0.008 * (2 * random() - 1), fill: 0.66 + 0.14 * random() });
  const moved = (): RoomLamps => ({
    angleDeg: lamps.angleDeg + 60 + 240 * random(),
    count: random() < 0.5 ? 1 : 2,
    warmth: 2 * random() - 1,
  });
  const scan = (): CameraPose => ({ tiltDeg: 0, towardDeg: 0, turnDeg: 3 * (2 * random() - 1), fill: 0.82, isScan: true });
  const scanLamps: RoomLamps = { angleDeg: 90, count: 2, warmth: 0, isScan: true };
  const photos = (
    name: string,
    count: number,
    faults: number | ((i: number) => number),
    pose: () => CameraPose,
    light: () => RoomLamps,
  ): PhotoPlan[] =>
    Array.from({ length: count }, (_, i) => {
      const full = `${board.name} ${name} ${i + 1}`;
      const planted = plantFaults(board, typeof faults === 'number' ? faults : faults(i), randomStream(`faults ${full}`));
      return { name: full, board, faults: planted, camera: cameraOver(board, SIZE, pose()), lamps: light() };
    });
  return {
    board,
    references: photos('reference', counts.references, 0, guided, () => lamps),
    guided: photos('guided', counts.guided, RENDERED_FAULTS, guided, () => lamps),
    clean: photos('clean', counts.clean, 0, guided, () => lamps),
    free: photos('free', counts.free, RENDERED_FAULTS, free, moved),
    scanReference: photos('scan reference', 1, 0, scan, () => scanLamps)[0]!,
    scans: photos(
      'scan',
      counts.scans,
      (i) => (i === 2 ? 0 : RENDERED_FAULTS),
      scan,
      () => scanLamps,
    ),
  };
}

/** A pose whose lean is at most `tiltDeg`, spread evenly over the leans there are. */
function poseWithin(tiltDeg: number, turnDeg: number, random: RandomStream): Omit<CameraPose, 'fill'> {
  const shift = 0.02;
  return {
    tiltDeg: tiltDeg * Math.sqrt(random()),
    towardDeg: 360 * random(),
    turnDeg: turnDeg * (2 * random() - 1),
    shift: [shift * (2 * random() - 1), shift * (2 * random() - 1)],
  };
}

/** Every photo of a plan. */
export const photosOf = ({ references, guided, clean, free, scanReference, scans }: BoardPlan): PhotoPlan[] => [
  ...references,
  ...guided,
  ...clean,
  ...free,
  scanReference,
  ...scans,
];
