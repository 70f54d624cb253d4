import sharp from 'sharp';

/** Height of `h` mm above the ground as a grey level; the root keeps thin things such as tracks apart. */
const TALLEST_MM = 12;
const greyOf = (h) => Math.round(255 * Math.sqrt(Math.min(TALLEST_MM, Math.max(0, h)) / TALLEST_MM));

/**
 * A drawing with a body: each shape gives its colour, its height (mm) and its finish (gloss and metal, 0 to 1), and the
 * three become three pictures of the same size, from which the camera makes light and shadow.
 */
export class Relief {
  constructor(widthMm, heightMm, pxPerMm, marginMm = 0) {
    Object.assign(this, { widthMm, heightMm, pxPerMm, marginMm, parts: { colour: [], height: [], finish: [] }, defs: [] });
  }

  /** Everything that `draw` puts is turned by `turn` degrees about its own origin, then moved to (x, y). */
  group(x, y, turn, draw) {
    const open = `<g transform="translate(${x} ${y}) rotate(${turn})">`;
    for (const layer of Object.values(this.parts)) layer.push(open);
    draw();
    for (const layer of Object.values(this.parts)) layer.push('</g>');
  }

  /**
   * One shape. `d`: path data; `fill`: colour; `h`: height at its top, `edge`: height at its rim (a dome between the
   * two when given); `width`: drawn as a line of that width; without `h` the ground keeps its height, without `gloss` its finish.
   */
  put(d, { fill, h, edge, gloss, metal = 0, width, opacity = 1 }) {
    const paint = (value) =>
      width === undefined
        ? `fill="${value}"`
        : `fill="none" stroke="${value}" stroke-width="${width}" stroke-linecap="round" stroke-linejoin="round"`;
    if (fill) this.parts.colour.push(`<path d="${d}" ${paint(fill)} opacity="${opacity}"/>`);
    if (h !== undefined) this.parts.height.push(`<path d="${d}" ${paint(edge === undefined ? grey(h) : this.#dome(h, edge))}/>`);
    if (gloss !== undefined) this.parts.finish.push(`<path d="${d}" ${paint(finish(gloss, metal))}/>`);
  }

  #dome(top, edge) {
    const id = `d${this.defs.length}`;
    const stops = [0, 0.35, 0.6, 0.8, 0.92, 1].map(
      (r) => `<stop offset="${r}" stop-color="${grey(edge + (top - edge) * Math.sqrt(1 - r * r))}"/>`,
    );
    this.defs.push(`<radialGradient id="${id}">${stops.join('')}</radialGradient>`);
    return `url(#${id})`;
  }

  /** The three pictures as raw bytes: `colour` RGBA, `height` in mm, `finish` as gloss and metal. */
  async render() {
    const [colour, height, finishPixels] = await Promise.all(
      ['colour', 'height', 'finish'].map((layer) => this.#rasterise(this.parts[layer])),
    );
    const { width, height: rows } = colour.info;
    const heights = new Float32Array(width * rows);
    for (let i = 0; i < heights.length; i++) heights[i] = ((height.data[4 * i] / 255) ** 2 * TALLEST_MM * height.data[4 * i + 3]) / 255;
    return { width, rows, pxPerMm: this.pxPerMm, colour: colour.data, heights, finish: finishPixels.data };
  }

  #rasterise(shapes) {
    const m = this.marginMm;
    const [wide, high] = [this.widthMm + 2 * m, this.heightMm + 2 * m];
    const [w, h] = [Math.round(wide * this.pxPerMm), Math.round(high * this.pxPerMm)];
    const svg =
      `<svg xmlns="http://www.w3.org/2000/svg" width="${w}" height="${h}" viewBox="${-m} ${-m} ${wide} ${high}">` +
      `<defs>${this.defs.join('')}</defs>${shapes.join('')}</svg>`;
    return sharp(Buffer.from(svg), { unlimited: true }).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  }
}

const grey = (h) => `rgb(${greyOf(h)},${greyOf(h)},${greyOf(h)})`;
const finish = (gloss, metal) => `rgb(${Math.round(gloss * 255)},${Math.round(metal * 255)},0)`;

/** Path of a rectangle about (x, y), with rounded corners. */
export function box(x, y, w, h, r = 0) {
  const [l, t, right, b] = [x - w / 2, y - h / 2, x + w / 2, y + h / 2];
  if (r <= 0) return `M${l} ${t}H${right}V${b}H${l}Z`;
  return (
    `M${l + r} ${t}H${right - r}A${r} ${r} 0 0 1 ${right} ${t + r}V${b - r}A${r} ${r} 0 0 1 ${right - r} ${b}` +
    `H${l + r}A${r} ${r} 0 0 1 ${l} ${b - r}V${t + r}A${r} ${r} 0 0 1 ${l + r} ${t}Z`
  );
}

/** Path of a disc. */
export const disc = (x, y, r) => `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;

/** Path of a closed uneven outline about (x, y): `unevenness` 0 is a disc. Seeded by `random`. */
export function blot(x, y, r, unevenness, random) {
  const n = 14;
  const points = Array.from({ length: n }, (_, i) => {
    const angle = (2 * Math.PI * i) / n;
    const reach = r * (1 + unevenness * (2 * random() - 1));
    return [x + reach * Math.cos(angle), y + reach * Math.sin(angle)];
  });
  const middle = (a, b) => `${((a[0] + b[0]) / 2).toFixed(3)} ${((a[1] + b[1]) / 2).toFixed(3)}`;
  const curve = points.map((p, i) => `Q${p[0].toFixed(3)} ${p[1].toFixed(3)} ${middle(p, points[(i + 1) % n])}`);
  return `M${middle(points[n - 1], points[0])}${curve.join('')}Z`;
}
