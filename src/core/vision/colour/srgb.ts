import { brand, type Branded } from '../../quantity/index.ts';

/** A colour in CIE 1976 L*a*b*, for the white of daylight D65 and the 2° observer. */
export interface Lab {
  readonly L: number;
  readonly a: number;
  readonly b: number;
}

/** A colour difference by CIEDE2000: about 1 is just to be seen side by side. */
export type DeltaE00 = Branded<number, 'dE00'>;
export const deltaE00 = brand('dE00');

/** White of D65, 2° observer, Y = 1 (ASTM E308; as with the seven-digit matrix below). */
const WHITE = [0.95047, 1, 1.08883] as const;

/** sRGB channels 0..255 as light, 0..1. Source: IEC 61966-2-1 (1999), the inverse of eq. 8: linear below 0.04045, a power of 2.4 above. */
export const lightOf = (encoded: number): number => {
  const v = encoded / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
};

/** Light 0..1 as an sRGB channel 0..255, not rounded; light outside is held at the ends. */
export const encodedOf = (light: number): number => {
  const v = Math.max(0, Math.min(1, light));
  return 255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055);
};

/** CIE XYZ (Y = 1 for white) of an sRGB colour, channels 0..255. Primaries of IEC 61966-2-1 with seven digits. */
export function xyzOf(red: number, green: number, blue: number): [number, number, number] {
  const [r, g, b] = [lightOf(red), lightOf(green), lightOf(blue)];
  return [
    0.4124564 * r + 0.3575761 * g + 0.1804375 * b,
    0.2126729 * r + 0.7151522 * g + 0.072175 * b,
    0.0193339 * r + 0.119192 * g + 0.9503041 * b,
  ];
}

/** sRGB channels 0..255, not rounded, of CIE XYZ; colours that a screen cannot show are held at its ends. */
export function srgbOf(x: number, y: number, z: number): [number, number, number] {
  return [
    encodedOf(3.2404542 * x - 1.5371385 * y - 0.4985314 * z),
    encodedOf(-0.969266 * x + 1.8760108 * y + 0.041556 * z),
    encodedOf(0.0556434 * x - 0.2040259 * y + 1.0572252 * z),
  ];
}

/** L*a*b* of CIE XYZ. Source: CIE 15:2004, eq. 8.3 to 8.8. */
export function labOf(x: number, y: number, z: number): Lab {
  const [fx, fy, fz] = [x / WHITE[0], y / WHITE[1], z / WHITE[2]].map((t) =>
    t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29,
  ) as [number, number, number];
  return { L: 116 * fy - 16, a: 500 * (fx - fy), b: 200 * (fy - fz) };
}

/** L*a*b* of an sRGB colour, channels 0..255. */
export const labOfSrgb = (red: number, green: number, blue: number): Lab => labOf(...xyzOf(red, green, blue));
