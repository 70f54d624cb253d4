/** A connected group of set pixels: bounds inclusive, in px. */
export interface Component {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  /** Pixel indices, `y · width + x`. */
  readonly pixels: readonly number[];
}

/** The groups of non-zero pixels that touch along sides or corners, in order of their first pixel. */
export function components(mask: Uint8Array, width: number): Component[] {
  const height = mask.length / width;
  const seen = new Uint8Array(mask.length);
  const found: Component[] = [];
  for (let start = 0; start < mask.length; start++) {
    if (!mask[start] || seen[start]) continue;
    found.push(bounded(flood(mask, seen, start, width, height), width));
  }
  return found;
}

function flood(mask: Uint8Array, seen: Uint8Array, start: number, width: number, height: number): number[] {
  const pixels = [start];
  seen[start] = 1;
  for (let k = 0; k < pixels.length; k++) {
    const x = pixels[k]! % width;
    const y = (pixels[k]! - x) / width;
    for (let ny = Math.max(0, y - 1); ny <= Math.min(height - 1, y + 1); ny++) {
      for (let nx = Math.max(0, x - 1); nx <= Math.min(width - 1, x + 1); nx++) {
        const i = ny * width + nx;
        if (!mask[i] || seen[i]) continue;
        seen[i] = 1;
        pixels.push(i);
      }
    }
  }
  return pixels;
}

/** A component of these pixels, with its bounds. */
export function bounded(pixels: readonly number[], width: number): Component {
  let left = Infinity;
  let top = Infinity;
  let right = -1;
  let bottom = -1;
  for (const i of pixels) {
    const x = i % width;
    const y = (i - x) / width;
    if (x < left) left = x;
    if (x > right) right = x;
    if (y < top) top = y;
    if (y > bottom) bottom = y;
  }
  return { left, top, right, bottom, pixels };
}
