import { gaussianBlur } from '../../src/core/vision/image/blur.ts';
import { planeOf, type Pixels, type Plane } from '../../src/core/vision/image/plane.ts';
import { valueAt } from '../../src/core/vision/image/resample.ts';
import { composed, inverted, mapped } from '../../src/core/vision/align/homography.ts';
import type { Homography } from '../../src/core/vision/picture-library.ts';
import type { RandomStream } from '../../src/core/numeric/index.ts';

/** How a flat thing is photographed anew: where it lies, and how it is lit and caught. */
export interface Scene {
  readonly maxTurnDeg: number;
  readonly maxTiltDeg: number;
  /** Share by which the gain may differ from corner to corner, and grey by which the offset may. */
  readonly light: number;
  readonly offset: number;
  readonly maxBlurPx: number;
  readonly noise: number;
  /** Barrel or pincushion: px at the corner over the half diagonal, at most. */
  readonly lens: number;
  /** White balance: share by which red and blue may differ. */
  readonly tint: number;
  /** Size of the new picture over the old one's longer side. */
  readonly canvas: number;
}

/** A photo of a picture, and where each point of the picture really went. */
export interface Shot {
  readonly pixels: Pixels;
  readonly truth: (x: number, y: number) => [number, number];
}

const between = (random: RandomStream, most: number): number => (2 * random() - 1) * most;

/** Photographs a picture anew by seed: turned, tilted, through a lens, under one sloping light, a little out of focus, with noise. */
export function photograph(picture: Pixels, scene: Scene, random: RandomStream): Shot {
  const size = Math.max(picture.width, picture.height);
  const side = Math.round(size * scene.canvas);
  const h = tiltedMap(
    picture,
    side,
    between(random, scene.maxTurnDeg),
    scene.maxTiltDeg * Math.sqrt(random()),
    2 * Math.PI * random(),
    size,
  );
  const back = inverted(h)!;
  const bend = between(random, scene.lens);
  const sample = (plane: Plane): Plane => taken(plane, back, side, bend);
  const light = lightOf(side, scene, random);
  const blur = random() * scene.maxBlurPx;
  const gains = [1 + between(random, scene.tint), 1, 1 + between(random, scene.tint)];
  const data = new Uint8Array(side * side * picture.channels);
  const table = 60 + 120 * random();
  const inside = sample(planeOf(picture.width, picture.height, 1));
  for (let c = 0; c < picture.channels; c++) {
    const plane = planeOf(picture.width, picture.height);
    for (let i = 0; i < plane.data.length; i++) plane.data[i] = picture.data[i * picture.channels + c]!;
    const seen = sample(plane);
    for (let i = 0; i < seen.data.length; i++) seen.data[i] = inside.data[i]! > 0.5 ? seen.data[i]! : table + 10 * Math.sin(i / 977);
    const soft = gaussianBlur(seen, blur);
    const gain = picture.channels === 1 ? 1 : gains[c]!;
    for (let i = 0; i < soft.data.length; i++) {
      const noise = scene.noise * (random() + random() + random() - 1.5) * 2;
      data[i * picture.channels + c] = Math.max(0, Math.min(255, soft.data[i]! * light.gain[i]! * gain + light.offset[i]! + noise));
    }
  }
  const truth = (x: number, y: number): [number, number] => bent(mapped(h, x, y), side, bend);
  return { pixels: { width: side, height: side, channels: picture.channels, data }, truth };
}

/** The picture turned and leaning, its middle in the middle of the new one, seen by a camera of a usual focal length. */
function tiltedMap(picture: Pixels, side: number, turnDeg: number, tiltDeg: number, toward: number, size: number): Homography {
  const turn = (turnDeg * Math.PI) / 180;
  const tilt = (tiltDeg * Math.PI) / 180;
  const focal = 0.85 * size;
  const centre: Homography = [1, 0, -(picture.width - 1) / 2, 0, 1, -(picture.height - 1) / 2, 0, 0, 1];
  const turned: Homography = [
    Math.cos(turn - toward),
    -Math.sin(turn - toward),
    0,
    Math.sin(turn - toward),
    Math.cos(turn - toward),
    0,
    0,
    0,
    1,
  ];
  const leaning: Homography = [Math.cos(tilt), 0, 0, 0, 1, 0, Math.sin(tilt) / focal, 0, 1];
  const rest: Homography = [Math.cos(toward), -Math.sin(toward), 0, Math.sin(toward), Math.cos(toward), 0, 0, 0, 1];
  const middle: Homography = [1, 0, (side - 1) / 2, 0, 1, (side - 1) / 2, 0, 0, 1];
  return composed(middle, composed(rest, composed(leaning, composed(turned, centre))));
}

/** Radial distortion about the middle: r → r·(1 + bend·(r/R)²), with bend of R/half diagonal. */
function bent([x, y]: [number, number], side: number, bend: number): [number, number] {
  const c = (side - 1) / 2;
  const r2 = ((x - c) ** 2 + (y - c) ** 2) / (2 * c * c);
  return [c + (x - c) * (1 + bend * r2), c + (y - c) * (1 + bend * r2)];
}

function taken(plane: Plane, back: Homography, side: number, bend: number): Plane {
  const out = planeOf(side, side);
  const c = (side - 1) / 2;
  for (let y = 0, i = 0; y < side; y++) {
    for (let x = 0; x < side; x++, i++) {
      let [px, py] = [x, y];
      for (let k = 0; k < 3; k++) {
        const r2 = ((px - c) ** 2 + (py - c) ** 2) / (2 * c * c);
        px = c + (x - c) / (1 + bend * r2);
        py = c + (y - c) / (1 + bend * r2);
      }
      const [u, v] = mapped(back, px, py);
      out.data[i] = u < -0.5 || v < -0.5 || u > plane.width - 0.5 || v > plane.height - 0.5 ? 0 : valueAt(plane, u, v);
    }
  }
  return out;
}

function lightOf(side: number, { light, offset }: Scene, random: RandomStream): { gain: Float32Array; offset: Float32Array } {
  const out = { gain: new Float32Array(side * side), offset: new Float32Array(side * side) };
  const slope = [between(random, light), between(random, light), between(random, light)] as const;
  const lift = [between(random, offset), between(random, offset)] as const;
  for (let y = 0, i = 0; y < side; y++) {
    for (let x = 0; x < side; x++, i++) {
      const u = x / side - 0.5;
      const v = y / side - 0.5;
      out.gain[i] = 1 + slope[0] / 2 + slope[1] * u + slope[2] * v;
      out.offset[i] = offset / 2 + lift[0] * u + lift[1] * v;
    }
  }
  return out;
}
