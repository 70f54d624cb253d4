import { boxBlur } from '../image/blur.ts';
import { planeOf, type Plane } from '../image/plane.ts';
import { halved, resized } from '../image/resample.ts';

/** Half the side of the window over which light is taken for even, as a share of the longer side of the picture. */
const WINDOW = 0.07;
/** The gain may differ from that of the whole picture by this factor: without it a bright speck on a flat ground would be taken for light and wiped out. */
const MOST_UNEVEN = 1.5;
/** Grey differences above this are taken for true differences and lose their say. */
const ROBUST_GREY = 40;

/**
 * `other` in the light of the reference: at each place other · gain + offset, where gain and offset are the local least-squares line of the reference on
 * the other, twice, the second time with less weight for what does not fit. Where the picture is flat the gain of the whole picture is used.
 */
export function inLightOf(reference: Plane, other: Plane): Plane {
  const small = { reference: halved(halved(reference)), other: halved(halved(other)) };
  let light = lineOf(small.reference, small.other, planeOf(small.reference.width, small.reference.height, 1));
  for (let round = 0; round < 2; round++) light = lineOf(small.reference, small.other, fitting(small.reference, small.other, light));
  const gain = resized(light.gain, reference.width, reference.height);
  const offset = resized(light.offset, reference.width, reference.height);
  const out = planeOf(reference.width, reference.height);
  for (let i = 0; i < out.data.length; i++) out.data[i] = other.data[i]! * gain.data[i]! + offset.data[i]!;
  return out;
}

interface Light {
  readonly gain: Plane;
  readonly offset: Plane;
}

function lineOf(reference: Plane, other: Plane, weights: Plane): Light {
  const radius = Math.max(4, Math.round(WINDOW * Math.max(reference.width, reference.height)));
  const mean = (value: (i: number) => number): Plane => {
    const plane = planeOf(reference.width, reference.height);
    for (let i = 0; i < plane.data.length; i++) plane.data[i] = weights.data[i]! * value(i);
    return boxBlur(boxBlur(plane, radius >> 1), radius >> 1);
  };
  const r = reference.data;
  const o = other.data;
  const [w, mr, mo, mro, moo] = [
    mean(() => 1),
    mean((i) => r[i]!),
    mean((i) => o[i]!),
    mean((i) => r[i]! * o[i]!),
    mean((i) => o[i]! ** 2),
  ];
  const whole = slope(sum(w), sum(mr), sum(mo), sum(mro), sum(moo), 1, 0);
  const gain = planeOf(reference.width, reference.height);
  const offset = planeOf(reference.width, reference.height);
  for (let i = 0; i < gain.data.length; i++) {
    const weight = Math.max(1e-6, w.data[i]!);
    const local = slope(weight, mr.data[i]!, mo.data[i]!, mro.data[i]!, moo.data[i]!, whole, 400);
    gain.data[i] = Math.min(MOST_UNEVEN * whole, Math.max(whole / MOST_UNEVEN, local));
    offset.data[i] = (mr.data[i]! - gain.data[i]! * mo.data[i]!) / weight;
  }
  return { gain, offset };
}

/** Slope of the reference on the other from weighted sums, drawn to `prior` with the strength of so much variance. */
function slope(w: number, mr: number, mo: number, mro: number, moo: number, prior: number, strength: number): number {
  const covariance = mro / w - (mr / w) * (mo / w);
  const variance = moo / w - (mo / w) ** 2;
  const value = (covariance + strength * prior) / Math.max(1e-6, variance + strength);
  return Math.min(4, Math.max(0.25, value));
}

const sum = (plane: Plane): number => plane.data.reduce((total, value) => total + value, 0);

function fitting(reference: Plane, other: Plane, { gain, offset }: Light): Plane {
  const weights = planeOf(reference.width, reference.height);
  for (let i = 0; i < weights.data.length; i++) {
    const e = reference.data[i]! - other.data[i]! * gain.data[i]! - offset.data[i]!;
    weights.data[i] = 1 / (1 + (e / ROBUST_GREY) ** 2);
  }
  return weights;
}
