import { planeOf, type Plane } from './plane.ts';

/** The value at a place between pixels (bilinear; pixel centres at whole numbers). Outside the picture the nearest border value. */
export function valueAt({ width, height, data }: Plane, x: number, y: number): number {
  if (x >= 0 && y >= 0 && x < width - 1 && y < height - 1) {
    const i = (y | 0) * width + (x | 0);
    const fx = x - (x | 0);
    const top = data[i]! + fx * (data[i + 1]! - data[i]!);
    const bottom = data[i + width]! + fx * (data[i + width + 1]! - data[i + width]!);
    return top + (y - (y | 0)) * (bottom - top);
  }
  return valueNearBorder(data, width, height, x, y);
}

function valueNearBorder(data: Float32Array, width: number, height: number, x: number, y: number): number {
  const cx = x < 0 ? 0 : x > width - 1 ? width - 1 : x;
  const cy = y < 0 ? 0 : y > height - 1 ? height - 1 : y;
  const x0 = cx | 0;
  const y0 = cy | 0;
  const x1 = x0 < width - 1 ? 1 : 0;
  const y1 = y0 < height - 1 ? width : 0;
  const fx = cx - x0;
  const fy = cy - y0;
  const i = y0 * width + x0;
  const top = data[i]! + fx * (data[i + x1]! - data[i]!);
  const bottom = data[i + y1]! + fx * (data[i + y1 + x1]! - data[i + y1]!);
  return top + fy * (bottom - top);
}

/** Half the size, each pixel the mean of four. An odd last row or column is dropped. */
export function halved({ width, height, data }: Plane): Plane {
  const out = planeOf(width >> 1, height >> 1);
  for (let y = 0, o = 0; y < out.height; y++) {
    let i = 2 * y * width;
    for (let x = 0; x < out.width; x++, o++, i += 2) out.data[o] = (data[i]! + data[i + 1]! + data[i + width]! + data[i + width + 1]!) / 4;
  }
  return out;
}

/** The size `width × height` from a plane, by means over areas when shrinking by two or more, then bilinear. */
export function resized(plane: Plane, width: number, height: number): Plane {
  let source = plane;
  while (source.width >= 2 * width && source.height >= 2 * height) source = halved(source);
  if (source.width === width && source.height === height) return source;
  const out = planeOf(width, height);
  const sx = source.width / width;
  const sy = source.height / height;
  for (let y = 0, i = 0; y < height; y++)
    for (let x = 0; x < width; x++, i++) out.data[i] = valueAt(source, (x + 0.5) * sx - 0.5, (y + 0.5) * sy - 0.5);
  return out;
}
