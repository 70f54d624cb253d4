import sharp from 'sharp';

/** Size of a photo, px. */
const [WIDTH, ROWS] = [1600, 1200];

/** A lamp up and to the left; unit vector towards it. */
const LAMP = unit([-0.42, -0.5, 0.76]);

/**
 * A photo of a relief lying on a ground: light, soft shadow, gloss, lens and grain. `pose`: `fill` share of the frame's
 * width, `turn` degrees, `tilt` and `lean` small perspective, `dx`, `dy` shift in shares of the frame; `warmth` −1..1; `light` 0.6..1.3.
 */
export async function photograph(relief, { pose, ground, random, warmth = 0, light = 1, blur = 0.55, grain = 0.85, quality = 78 }) {
  const scene = await relief.render();
  const lit = shade(scene, random, light);
  const shadow = await groundShadow(scene);
  const grounds = groundNoise(ground, random);
  const rgb = expose(scene, lit, shadow, { pose, grounds, light });
  const soft = await sharp(rgb, { raw: { width: WIDTH, height: ROWS, channels: 3 } })
    .blur(blur)
    .raw()
    .toBuffer();
  develop(soft, random, warmth, grain);
  return sharp(soft, { raw: { width: WIDTH, height: ROWS, channels: 3 } })
    .jpeg({ quality, chromaSubsampling: '4:2:0', mozjpeg: true })
    .toBuffer();
}

/** Colour of each pixel of the relief under the lamp. */
function shade(scene, random, light) {
  const { width, rows, colour, finish, pxPerMm } = scene;
  const heights = blurred(scene.heights, width, rows, 1);
  const wide = blurred(heights, width, rows, Math.round(pxPerMm * 0.55));
  const dark = castShadows(heights, width, rows, pxPerMm);
  const wave = smoothNoise(random, 5);
  const lamp = [width * (0.25 + 0.3 * random()), -rows * 0.15];
  const out = new Float32Array(width * rows * 3);
  for (let y = 1; y < rows - 1; y++)
    for (let x = 1; x < width - 1; x++) {
      const i = y * width + x;
      const slopeX = (heights[i - 1] - heights[i + 1]) * pxPerMm * 0.5 * 0.55 + 0.02 * (wave(x / width, y / rows) - 0.5);
      const slopeY = (heights[i - width] - heights[i + width]) * pxPerMm * 0.5 * 0.55 + 0.02 * (wave(y / rows + 3, x / width) - 0.5);
      const n = unit([slopeX, slopeY, 1]);
      const facing = Math.max(0, n[0] * LAMP[0] + n[1] * LAMP[1] + n[2] * LAMP[2]) / LAMP[2];
      const hollow = Math.min(0.55, Math.max(0, (wide[i] - heights[i]) * 0.42));
      const sun = dark[i];
      const diffuse = (0.42 * (1 - hollow) + 0.6 * facing * sun) * light;
      const [gloss, metal] = [finish[4 * i] / 255, finish[4 * i + 1] / 255];
      const glare = gleam(n, [x - lamp[0], y - lamp[1]], rows, gloss, sun);
      const sky = 0.5 + 0.5 * Math.tanh(2.2 * (n[1] * -1.1 + n[0] * -0.5 + 0.12));
      for (let c = 0; c < 3; c++) {
        const base = (colour[4 * i + c] / 255) ** 2.2;
        const flat = base * diffuse;
        const mirror = base * (0.25 + 1.05 * sky) * (0.35 + 0.65 * sun) * light * (1 - hollow * 0.7);
        out[3 * i + c] = flat * (1 - 0.72 * metal) + mirror * 0.72 * metal + glare * (metal > 0.5 ? 0.5 + 0.5 * base : 1);
      }
    }
  return out;
}

/** What the lamp leaves on a glossy face: a tight spot on slopes that face it and a wide sheen on the flat. */
function gleam(n, [dx, dy], rows, gloss, sun) {
  const view = unit([-dx * 0.00018, -dy * 0.00018, 1]);
  const half = unit([LAMP[0] * 0.62 + view[0], LAMP[1] * 0.62 + view[1], LAMP[2] + view[2]]);
  const close = Math.max(0, n[0] * half[0] + n[1] * half[1] + n[2] * half[2]);
  const sheen = Math.exp(-((dx / rows) ** 2 * 2.6 + (dy / rows) ** 2 * 2.2));
  return gloss * sun * (0.5 * close ** 60 * gloss + 0.085 * sheen ** 1.5);
}

/** How much of a lamp of some size each pixel sees: 1 all, near 0 none. */
function castShadows(heights, width, rows, pxPerMm) {
  const out = new Float32Array(width * rows).fill(1);
  const rise = LAMP[2] / Math.hypot(LAMP[0], LAMP[1]);
  const [sx, sy] = [LAMP[0], LAMP[1]].map((each) => each / Math.hypot(LAMP[0], LAMP[1]));
  const reach = 9 * pxPerMm;
  for (let y = 0; y < rows; y++)
    for (let x = 0; x < width; x++) {
      const own = heights[y * width + x];
      let worst = 0;
      for (let d = 2; d < reach; d += d < 30 ? 3 : 7) {
        const [px, py] = [Math.round(x + sx * d), Math.round(y + sy * d)];
        if (px < 0 || py < 0 || px >= width || py >= rows) break;
        const over = heights[py * width + px] - own - (d / pxPerMm) * rise;
        if (over > 0) worst = Math.max(worst, Math.min(1, over / (0.05 + (0.16 * d) / pxPerMm)));
      }
      out[y * width + x] = 1 - 0.86 * worst;
    }
  return blurred(out, width, rows, 2);
}

/** Shadow of the whole thing on what it lies on, half size. */
async function groundShadow({ width, rows, colour, pxPerMm }) {
  const alpha = Buffer.alloc(width * rows);
  for (let i = 0; i < alpha.length; i++) alpha[i] = colour[4 * i + 3];
  const pad = Math.round(10 * pxPerMm);
  const { data, info } = await sharp(alpha, { raw: { width, height: rows, channels: 1 } })
    .extend({ top: pad, bottom: pad, left: pad, right: pad, background: '#000' })
    .blur(1.3 * pxPerMm)
    .toColourspace('b-w')
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { data, width: info.width, rows: info.height, pad, offset: 1.5 * pxPerMm };
}

/** Through the lens: each pixel of the photo looked up on the relief or on the ground beside it. */
function expose(scene, lit, shadow, { pose, grounds, light }) {
  const rgb = Buffer.alloc(WIDTH * ROWS * 3);
  const { fill = 0.86, turn = 0, tilt = 0, lean = 0, dx = 0, dy = 0, barrel = 0.035 } = pose;
  const scale = scene.width / (fill * WIDTH);
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  for (let row = 0; row < ROWS; row++)
    for (let col = 0; col < WIDTH; col++) {
      const [u, v] = [col / WIDTH - 0.5 - dx, (row - ROWS / 2) / WIDTH - dy];
      const r2 = u * u + v * v;
      const bend = 1 + barrel * r2;
      const depth = 1 + tilt * v + lean * u;
      const [p, q] = [(u * bend) / depth, (v * bend) / depth];
      const x = (p * cos + q * sin) * WIDTH * scale + scene.width / 2;
      const y = (-p * sin + q * cos) * WIDTH * scale + scene.rows / 2;
      const fall = light * (1.1 - 0.95 * r2 - 0.28 * (u + v));
      sample(rgb, 3 * (row * WIDTH + col), scene, lit, shadow, grounds, x, y, fall);
    }
  return rgb;
}

function sample(rgb, at, scene, lit, shadow, grounds, x, y, fall) {
  const { width, rows, colour } = scene;
  const [fx, fy] = [Math.floor(x), Math.floor(y)];
  let [red, green, blue, alpha] = [0, 0, 0, 0];
  if (fx >= 1 && fy >= 1 && fx < width - 2 && fy < rows - 2)
    for (const [ox, oy, share] of [
      [0, 0, (1 - x + fx) * (1 - y + fy)],
      [1, 0, (x - fx) * (1 - y + fy)],
      [0, 1, (1 - x + fx) * (y - fy)],
      [1, 1, (x - fx) * (y - fy)],
    ]) {
      const i = (fy + oy) * width + fx + ox;
      const weight = (share * colour[4 * i + 3]) / 255;
      red += lit[3 * i] * weight;
      green += lit[3 * i + 1] * weight;
      blue += lit[3 * i + 2] * weight;
      alpha += weight;
    }
  const [sx, sy] = [Math.round(x - shadow.offset + shadow.pad), Math.round(y - shadow.offset + shadow.pad)];
  const inside = sx >= 0 && sy >= 0 && sx < shadow.width && sy < shadow.rows;
  const shaded = 1 - 0.62 * (inside ? shadow.data[sy * shadow.width + sx] / 255 : 0);
  const under = alpha < 0.999 ? grounds(x / scene.pxPerMm, y / scene.pxPerMm) : [0, 0, 0];
  [red, green, blue].forEach((value, c) => {
    const linear = (value + under[c] * shaded * (1 - alpha)) * fall;
    rgb[at + c] = 255 * Math.min(1, Math.max(0, linear)) ** (1 / 2.2);
  });
}

/** Grain, a little colour noise and the warmth of the lamp. */
function develop(pixels, random, warmth, grain) {
  const gain = [1 + 0.07 * warmth, 1, 1 - 0.09 * warmth];
  for (let i = 0; i < pixels.length; i += 3) {
    const noise = (random() + random() + random() - 1.5) * 5.2 * grain;
    for (let c = 0; c < 3; c++) {
      const tint = (random() - 0.5) * 2.6 * grain;
      const value = pixels[i + c] * gain[c] + noise + tint;
      pixels[i + c] = Math.min(255, Math.max(0, value));
    }
  }
}

/** The look of what things lie on, as linear colour by place in mm. */
function groundNoise(kind, random) {
  const [fine, broad] = [smoothNoise(random, 64), smoothNoise(random, 16)];
  const grounds = {
    mat: (x, y) => {
      const line = Math.min(Math.abs((((x % 10) + 10) % 10) - 5), Math.abs((((y % 10) + 10) % 10) - 5)) < 0.09 ? 0.05 : 0;
      const grainy = 0.8 + 0.4 * fine(x / 9, y / 9);
      return [0.045 * grainy + line, 0.105 * grainy + line, 0.125 * grainy + line];
    },
    paper: (x, y) => {
      const grainy = 0.93 + 0.09 * fine(x / 14, y / 14) + 0.05 * broad(x / 160, y / 160);
      return [0.6 * grainy, 0.58 * grainy, 0.53 * grainy];
    },
    wood: (x, y) => {
      const bent = y + 4 * broad(x / 420, y / 120);
      const ring = 0.5 + 0.5 * Math.sin(bent * 0.85 + 5 * broad(x / 700, y / 40));
      const grainy = 0.72 + 0.3 * ring + 0.25 * fine(x / 70, y / 3.2);
      return [0.27 * grainy, 0.145 * grainy, 0.066 * grainy];
    },
    cloth: (x, y) => {
      const weave = 0.8 + 0.13 * Math.sin(x * 5.2) * Math.sin(y * 5.2) + 0.25 * fine(x / 7, y / 7) + 0.2 * broad(x / 120, y / 120);
      return [0.2 * weave, 0.215 * weave, 0.24 * weave];
    },
  };
  return grounds[kind];
}

/** Smooth noise from 0 to 1 over a plane, `cells` random values to the unit, repeated. */
function smoothNoise(random, cells) {
  const side = 128;
  const values = Float32Array.from({ length: side * side }, () => random());
  const ease = (t) => t * t * (3 - 2 * t);
  return (u, v) => {
    const [x, y] = [u * cells, v * cells];
    const [ix, iy] = [Math.floor(x), Math.floor(y)];
    const [fx, fy] = [ease(x - ix), ease(y - iy)];
    const at = (a, b) => values[(((b % side) + side) % side) * side + (((a % side) + side) % side)];
    const top = at(ix, iy) * (1 - fx) + at(ix + 1, iy) * fx;
    return top * (1 - fy) + (at(ix, iy + 1) * (1 - fx) + at(ix + 1, iy + 1) * fx) * fy;
  };
}

/** A box blur of radius `r`, twice, which is close to a bell. */
function blurred(values, width, rows, r) {
  let from = values;
  for (let pass = 0; pass < 2; pass++) from = boxBlur(boxBlur(from, width, rows, r, 1, width), rows, width, r, width, 1);
  return from;
}

function boxBlur(values, length, lines, r, step, stride) {
  const out = new Float32Array(values.length);
  for (let line = 0; line < lines; line++) {
    const start = line * stride;
    let sum = 0;
    for (let i = -r; i <= r; i++) sum += values[start + Math.min(length - 1, Math.max(0, i)) * step];
    for (let i = 0; i < length; i++) {
      out[start + i * step] = sum / (2 * r + 1);
      sum += values[start + Math.min(length - 1, i + r + 1) * step] - values[start + Math.max(0, i - r) * step];
    }
  }
  return out;
}

function unit([x, y, z]) {
  const length = Math.hypot(x, y, z);
  return [x / length, y / length, z / length];
}
