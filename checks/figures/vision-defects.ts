import type { Pixels } from '../../src/core/vision/image/plane.ts';
import type { RandomStream } from '../../src/core/numeric/index.ts';

/** A rectangle in px: left, top, right and bottom, the last two not included. */
export type Box = readonly [number, number, number, number];

export type PlantedKind = 'missing' | 'added' | 'moved' | 'stain' | 'scratch';

export interface Planted {
  readonly kind: PlantedKind;
  readonly box: Box;
}

const KINDS: readonly PlantedKind[] = ['missing', 'added', 'moved', 'stain', 'scratch'];
/** A defect counts when so many pixels changed by so much in some channel: less is not to be seen in a photo. */
const SEEN_PX = 40;
const SEEN_GREY = 25;

/** A board with `count` defects planted by seed inside `region`, apart from one another, and where they are. */
export function plantDefects(board: Pixels, region: Box, count: number, random: RandomStream): { pixels: Pixels; planted: Planted[] } {
  let pixels = board;
  const planted: Planted[] = [];
  for (let tries = 0; planted.length < count && tries < 40 * count; tries++) {
    const kind = KINDS[Math.floor(random() * KINDS.length)]!;
    const side = Math.round(12 + 24 * random());
    const x = Math.round(region[0] + 6 + random() * (region[2] - region[0] - side - 12));
    const y = Math.round(region[1] + 6 + random() * (region[3] - region[1] - side - 12));
    const next = changed(pixels, kind, x, y, side, Math.round(12 + 24 * random()), random);
    const box = next && changedBox(pixels, next, [x - 20, y - 20, x + side + 20, y + 60]);
    if (!box || planted.some((other) => near(other.box, box))) continue;
    pixels = next;
    planted.push({ kind, box });
  }
  return { pixels, planted };
}

const near = (a: Box, b: Box): boolean => a[0] < b[2] + 20 && b[0] < a[2] + 20 && a[1] < b[3] + 20 && b[1] < a[3] + 20;

function changed(from: Pixels, kind: PlantedKind, x: number, y: number, w: number, h: number, random: RandomStream): Pixels | undefined {
  const busy = busyness(from, x, y, w, h);
  if (kind === 'missing') return busy > 12 ? missing(from, x, y, w, h, random) : undefined;
  if (kind === 'added') return added(from, x, y, w, h, random);
  if (kind === 'moved') return busy > 12 ? moved(from, x, y, w, h, random) : undefined;
  if (kind === 'stain') return stain(from, x, y, w, h, random);
  return scratch(from, x, y, w, h, random);
}

/** Mean difference of neighbours: where parts and print are. */
function busyness({ width, channels, data }: Pixels, x0: number, y0: number, w: number, h: number): number {
  let sum = 0;
  for (let y = y0; y < y0 + h; y++)
    for (let x = x0; x < x0 + w; x++) {
      const i = (y * width + x) * channels + 1;
      sum += Math.abs(data[i]! - data[i + channels]!) + Math.abs(data[i]! - data[i + width * channels]!);
    }
  return sum / (w * h);
}

/** Pixels blended in by `alpha` (0..1 by place) from `colour` (by place and channel). */
function blended(
  from: Pixels,
  [x0, y0, x1, y1]: Box,
  alpha: (x: number, y: number) => number,
  colour: (x: number, y: number, c: number) => number,
): Pixels {
  const data = from.data.slice();
  for (let y = Math.max(0, y0); y < Math.min(from.height, y1); y++) {
    for (let x = Math.max(0, x0); x < Math.min(from.width, x1); x++) {
      const a = Math.max(0, Math.min(1, alpha(x, y)));
      if (a === 0) continue;
      for (let c = 0; c < from.channels; c++) {
        const i = (y * from.width + x) * from.channels + c;
        data[i] = data[i]! + a * (colour(x, y, c) - data[i]!);
      }
    }
  }
  return { ...from, data };
}

const at = ({ width, height, channels, data }: Pixels, x: number, y: number, c: number): number => {
  const cx = Math.max(0, Math.min(width - 1, Math.round(x)));
  const cy = Math.max(0, Math.min(height - 1, Math.round(y)));
  return data[(cy * width + cx) * channels + c]!;
};

/** 1 inside a box, falling to 0 over its last two pixels. */
const feathered =
  (x0: number, y0: number, w: number, h: number) =>
  (x: number, y: number): number =>
    Math.min(1, Math.min(x - x0 + 1, y - y0 + 1, x0 + w - x, y0 + h - y) / 2);

/** The quietest of some patches near by stands for the bare board. */
function bareNear(from: Pixels, x: number, y: number, w: number, h: number, random: RandomStream): [number, number] {
  let best: [number, number] = [x, y];
  let least = Infinity;
  for (let k = 0; k < 60; k++) {
    const u = Math.round(Math.max(2, Math.min(from.width - w - 3, x + (random() - 0.5) * 300)));
    const v = Math.round(Math.max(2, Math.min(from.height - h - 3, y + (random() - 0.5) * 300)));
    const busy = busyness(from, u, v, w, h);
    if (busy < least) {
      least = busy;
      best = [u, v];
    }
  }
  return best;
}

/** Bare board of near by laid over a rectangle. */
export function missing(from: Pixels, x: number, y: number, w: number, h: number, random: RandomStream): Pixels {
  const [u, v] = bareNear(from, x, y, w, h, random);
  return blended(from, [x, y, x + w, y + h], feathered(x, y, w, h), (px, py, c) => at(from, u + px - x, v + py - y, c));
}

/** A blob of solder with a highlight, or a patch from elsewhere on the board. */
function added(from: Pixels, x: number, y: number, w: number, h: number, random: RandomStream): Pixels {
  if (random() < 0.5) {
    const u = Math.round(random() * (from.width - w - 1));
    const v = Math.round(random() * (from.height - h - 1));
    return blended(from, [x, y, x + w, y + h], feathered(x, y, w, h), (px, py, c) => at(from, u + px - x, v + py - y, c));
  }
  const [cx, cy] = [x + w / 2, y + h / 2];
  const [rx, ry] = [w / 2.6, h / 2.6];
  const r = (px: number, py: number): number => Math.hypot((px - cx) / rx, (py - cy) / ry);
  return blended(
    from,
    [x, y, x + w, y + h],
    (px, py) => (1.15 - r(px, py)) * 5,
    (px, py, c) => 115 + 25 * (1 - c / 6) + 110 * Math.exp(-6 * Math.hypot((px - cx) / rx + 0.3, (py - cy) / ry + 0.3) ** 2),
  );
}

/** What lies there turned and shifted, on bare board. */
function moved(from: Pixels, x: number, y: number, w: number, h: number, random: RandomStream): Pixels {
  const bare = missing(from, x, y, w, h, random);
  const turn = (random() - 0.5) * 0.7;
  const [dx, dy] = [(random() < 0.5 ? -1 : 1) * (3 + 5 * random()), (random() - 0.5) * 8];
  const [cx, cy] = [x + w / 2 + dx, y + h / 2 + dy];
  const back = (px: number, py: number): [number, number] => [
    (px - cx) * Math.cos(turn) + (py - cy) * Math.sin(turn) + x + w / 2,
    -(px - cx) * Math.sin(turn) + (py - cy) * Math.cos(turn) + y + h / 2,
  ];
  const soft = feathered(x, y, w, h);
  return blended(
    bare,
    [x - 12, y - 12, x + w + 12, y + h + 12],
    (px, py) => soft(...back(px, py)),
    (px, py, c) => at(from, ...back(px, py), c),
  );
}

/** A ragged film, green-white as corrosion or brown as flux. */
function stain(from: Pixels, x: number, y: number, w: number, h: number, random: RandomStream): Pixels {
  const colour = random() < 0.5 ? [170, 205, 185] : [120, 80, 40];
  const strength = 0.45 + 0.4 * random();
  const waves = Array.from({ length: 4 }, () => [random() * 6, random() * 0.25] as const);
  const [cx, cy] = [x + w / 2, y + h / 2];
  const edge = (angle: number): number => 0.8 + waves.reduce((sum, [phase, size], k) => sum + size * Math.sin((k + 2) * angle + phase), 0);
  return blended(
    from,
    [x, y, x + w, y + h],
    (px, py) => {
      const r = Math.hypot((px - cx) / (w / 2), (py - cy) / (h / 2)) / Math.max(0.3, edge(Math.atan2(py - cy, px - cx)));
      return strength * (1 - r) * 3 > strength ? strength : strength * (1 - r) * 3;
    },
    (px, py, c) => colour[c]! + 18 * Math.sin(px * 1.3 + py * 0.7),
  );
}

/** A scratch through the mask: bright metal or dark, 2 to 3 px wide. */
function scratch(from: Pixels, x: number, y: number, w: number, h: number, random: RandomStream): Pixels {
  const colour = random() < 0.6 ? [215, 150, 95] : [25, 22, 20];
  const half = 0.8 + 0.7 * random();
  const flip = random() < 0.5;
  const along = (px: number, py: number): number => {
    const t = (px - x) / w;
    return Math.abs((flip ? 1 - t : t) * h + y + 2 * Math.sin(t * 7) - py) * (w / Math.hypot(w, h));
  };
  return blended(
    from,
    [x, y - 3, x + w, y + h + 3],
    (px, py) => half + 0.5 - along(px, py),
    (_, __, c) => colour[c]!,
  );
}

/** Where two pictures differ to the eye, looked for within a window; undefined where too little does. */
function changedBox(a: Pixels, b: Pixels, [x0, y0, x1, y1]: Box): Box | undefined {
  let [left, top, right, bottom, seen] = [a.width, a.height, 0, 0, 0];
  for (let y = Math.max(0, y0); y < Math.min(a.height, y1); y++) {
    for (let x = Math.max(0, x0); x < Math.min(a.width, x1); x++) {
      let off = 0;
      for (let c = 0, i = (y * a.width + x) * a.channels; c < a.channels; c++, i++) off = Math.max(off, Math.abs(a.data[i]! - b.data[i]!));
      if (off > SEEN_GREY) seen++;
      if (off <= SEEN_GREY / 2) continue;
      left = Math.min(left, x);
      right = Math.max(right, x + 1);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y + 1);
    }
  }
  return seen >= SEEN_PX ? [left, top, right, bottom] : undefined;
}
