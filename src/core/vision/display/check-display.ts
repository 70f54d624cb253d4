import { fourPointMap, type Point, type Quad } from '../align/four-point-map.ts';
import { warpedByHomography } from '../align/homography.ts';
import { lightOf } from '../colour/srgb.ts';
import { gaussianBlur } from '../image/blur.ts';
import { planeOf, type Pixels, type Plane } from '../image/plane.ts';
import { findScreen } from './find-screen.ts';
import { flatField } from './flat-field.ts';
import { oddPlaces, type Dot, type Line } from './odd-places.ts';
import { stainsOf, type Stain } from './stains.ts';

/** What the display was showing all over. */
export const SHOWN = ['white', 'black', 'red', 'green', 'blue'] as const;
export type Shown = (typeof SHOWN)[number];

export interface DisplayQuestion {
  readonly shows: Shown;
  /** Corners of the picture on the display, clockwise from the upper left, px of the photo; looked for where they are left out. */
  readonly corners?: Quad;
  /** Dots of the display across and down, where they are known: then dots are counted, not specks. */
  readonly dots?: readonly [number, number];
}

export interface DisplayFound {
  readonly ok: true;
  readonly corners: Quad;
  /** Places are shares of the display from its upper left corner. */
  readonly dots: readonly Dot[];
  readonly lines: readonly Line[];
  readonly stains: readonly Stain[];
  /** How far the darkest place lies below the middle, % of its light; null for black. Lens and angle of view are in it. */
  readonly darkestPercent: number | null;
}

export type DisplayAnswer =
  DisplayFound | { readonly ok: false; readonly code: 'screen-not-found' | 'too-small' | 'too-dark' | 'too-bright' | 'not-flat' };

/** A display narrower than this on the photo shows no single dots, px. */
const LEAST_PX = 160;
/** Longer side at which it is judged, px. */
const JUDGED_PX = 900;
/** Light of a lit display that is not too dark to judge, and the share of burnt-out pixels above which it is too bright. */
const LEAST_LIGHT = 0.02;
const BURNT = 250;
const MOST_BURNT = 0.25;

/**
 * Dead and stuck dots, lines, stains and uneven light of a display on one photo. A photo of a lit display finds its own corners; for black they
 * are to be said, as a photo from the same pose has them. What the photo does not show (angle, glare, dots finer than its pixels) is not found.
 */
export function checkDisplay(pixels: Pixels, question: DisplayQuestion): DisplayAnswer {
  const lit = question.shows !== 'black';
  const light = channelOf(pixels, question.shows);
  const corners = question.corners ?? (lit ? findScreen(light.encoded) : null);
  if (!corners) return { ok: false, code: 'screen-not-found' };
  const [across, down] = [
    (distance(corners[0], corners[1]) + distance(corners[3], corners[2])) / 2,
    (distance(corners[0], corners[3]) + distance(corners[1], corners[2])) / 2,
  ];
  if (Math.min(across, down) < LEAST_PX) return { ok: false, code: 'too-small' };
  const { width, height, dotPx } = sizeOf(across, down, question.dots);
  const map = fourPointMap(
    [
      [0, 0],
      [width - 1, 0],
      [width - 1, height - 1],
      [0, height - 1],
    ],
    corners,
  );
  if (!map) return { ok: false, code: 'not-flat' };
  const flat = warpedByHomography(light.linear, map, width, height);
  if (lit) {
    const mean = flat.data.reduce((sum, value) => sum + value, 0) / flat.data.length;
    if (mean < LEAST_LIGHT) return { ok: false, code: 'too-dark' };
    const burnt = warpedByHomography(light.encoded, map, width, height).data.filter((value) => value >= BURNT).length;
    if (burnt > MOST_BURNT * flat.data.length) return { ok: false, code: 'too-bright' };
  }
  const places = oddPlaces(dotPx === 0 ? gaussianBlur(flat, 0.7) : perDot(flat, dotPx), lit ? 'dark' : 'bright', dotPx > 0);
  return { ok: true, corners, ...places, ...evenness(flat, lit, places) };
}

function evenness(
  flat: Plane,
  lit: boolean,
  { lines, dots }: Pick<DisplayFound, 'lines' | 'dots'>,
): Pick<DisplayFound, 'stains' | 'darkestPercent'> {
  if (!lit) return { stains: [], darkestPercent: null };
  const gone = [...lines.map(({ across, at }) => (across ? { x: 0.5, y: at, w: 1, h: 0 } : { x: at, y: 0.5, w: 0, h: 1 })), ...dots];
  const whole = gone.reduce(filled, flat);
  const smooth = gaussianBlur(whole, flat.width / 60);
  return { stains: stainsOf(smooth, flatField(smooth)), darkestPercent: darkest(gaussianBlur(whole, flat.width / 30)) };
}

/** So far beside a place that stands out the light is whole again, share of the display. */
const BESIDE = 0.018;

/** The picture with a place filled straight from one side of it to the other across its narrower way, so that it makes no stain. */
function filled({ width, height, data }: Plane, { x, y, w, h }: Pick<Dot, 'x' | 'y' | 'w' | 'h'>): Plane {
  const down = h * height <= w * width;
  const range = (at: number, size: number, count: number): [number, number] => [
    Math.max(1, Math.floor((at - size / 2 - BESIDE) * count)),
    Math.min(count - 2, Math.ceil((at + size / 2 + BESIDE) * count)),
  ];
  const [[left, right], [top, bottom]] = [range(x, w, width), range(y, h, height)];
  const [[first, last], [from, to]] = down
    ? [
        [top, bottom],
        [left, right],
      ]
    : [
        [left, right],
        [top, bottom],
      ];
  const out = Float32Array.from(data);
  const index = (k: number, j: number): number => (down ? k * width + j : j * width + k);
  for (let j = from === 1 ? 0 : from; j <= (to === (down ? width : height) - 2 ? to + 1 : to); j++) {
    const [before, after] = [data[index(first - 1, j)]!, data[index(last + 1, j)]!];
    for (let k = first; k <= last; k++) out[index(k, j)] = before + ((after - before) * (k - first + 1)) / (last - first + 2);
  }
  return { width, height, data: out };
}

/** Per cent below the mean of the middle fifth, without a rim of 4 %. */
function darkest({ width, height, data }: Plane): number {
  const inside = (from: number, to: number): number[] => {
    const values: number[] = [];
    for (let y = Math.ceil(from * height); y < to * height; y++)
      for (let x = Math.ceil(from * width); x < to * width; x++) values.push(data[y * width + x]!);
    return values;
  };
  const middle = inside(0.4, 0.6);
  const mean = middle.reduce((sum, value) => sum + value, 0) / middle.length;
  const least = inside(0.04, 0.96).reduce((low, value) => Math.min(low, value), Infinity);
  return Math.max(0, 100 * (1 - least / mean));
}

/** The light that the shown colour is made of: encoded 0..255 as the camera wrote it, and linear 0..1. */
function channelOf({ width, height, channels, data }: Pixels, shows: Shown): { encoded: Plane; linear: Plane } {
  const [encoded, linear] = [planeOf(width, height), planeOf(width, height)];
  const weights =
    channels === 1 || shows === 'white' || shows === 'black'
      ? [0.299, 0.587, 0.114]
      : [shows === 'red' ? 1 : 0, shows === 'green' ? 1 : 0, shows === 'blue' ? 1 : 0];
  const table = Float32Array.from({ length: 256 }, (_, i) => lightOf(i));
  for (let i = 0, p = 0; i < encoded.data.length; i++, p += channels) {
    const at = (c: number): number => data[channels === 1 ? p : p + c]!;
    encoded.data[i] = weights[0]! * at(0) + weights[1]! * at(1) + weights[2]! * at(2);
    linear.data[i] = weights[0]! * table[at(0)]! + weights[1]! * table[at(1)]! + weights[2]! * table[at(2)]!;
  }
  return { encoded, linear };
}

/** The mean light of each dot of the display. */
function perDot({ width, height, data }: Plane, dotPx: number): Plane {
  const out = planeOf(width / dotPx, height / dotPx);
  for (let y = 0, i = 0; y < height; y++)
    for (let x = 0; x < width; x++, i++) out.data[Math.floor(y / dotPx) * out.width + Math.floor(x / dotPx)]! += data[i]! / dotPx ** 2;
  return out;
}

/** Size at which it is judged: whole pixels a dot where the dots are known, no finer than the photo. */
function sizeOf(across: number, down: number, dots: DisplayQuestion['dots']): { width: number; height: number; dotPx: number } {
  if (dots) {
    const dotPx = Math.max(2, Math.min(Math.round(across / dots[0]), Math.floor(JUDGED_PX / Math.max(...dots))));
    return { width: dots[0] * dotPx, height: dots[1] * dotPx, dotPx };
  }
  const factor = Math.min(1, JUDGED_PX / Math.max(across, down));
  return { width: Math.round(across * factor), height: Math.round(down * factor), dotPx: 0 };
}

const distance = ([ax, ay]: Point, [bx, by]: Point): number => Math.hypot(ax - bx, ay - by);
