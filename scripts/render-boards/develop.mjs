import sharp from 'sharp';

/** A drawn scene as a phone gives it: bent by the lens, a little out of focus, darker towards the corners, with grain, as JPEG. */
export async function develop(png, { bend }, { blurPx, grain, vignette, quality }, random) {
  const { data, info } = await sharp(png).removeAlpha().raw().toBuffer({ resolveWithObject: true });
  const bent = throughLens(data, info.width, info.height, bend, vignette);
  const raw = { width: info.width, height: info.height, channels: 3 };
  const soft = blurPx < 0.3 ? bent : await sharp(bent, { raw }).blur(blurPx).raw().toBuffer();
  for (let i = 0; i < soft.length; i++) soft[i] = Math.max(0, Math.min(255, soft[i] + grain * 2 * (random() + random() + random() - 1.5)));
  return sharp(soft, { raw }).jpeg({ quality, mozjpeg: true }).toBuffer();
}

/** Each pixel taken from where the light came from before the lens bent it: r → r·(1 + bend·(r/half diagonal)²). */
function throughLens(data, width, height, bend, vignette) {
  const out = Buffer.alloc(data.length);
  const [cx, cy] = [(width - 1) / 2, (height - 1) / 2];
  const corner = (width * width + height * height) / 4;
  for (let y = 0, i = 0; y < height; y++)
    for (let x = 0; x < width; x++, i += 3) {
      let [u, v] = [x - cx, y - cy];
      for (let round = 0; round < 3; round++) {
        const k = 1 + (bend * (u * u + v * v)) / corner;
        [u, v] = [(x - cx) / k, (y - cy) / k];
      }
      const shade = 1 - (vignette * (u * u + v * v)) / corner;
      bilinear(data, width, height, u + cx, v + cy, out, i, shade);
    }
  return out;
}

function bilinear(data, width, height, x, y, out, i, shade) {
  const [px, py] = [Math.max(0, Math.min(width - 1.001, x)), Math.max(0, Math.min(height - 1.001, y))];
  const [x0, y0] = [Math.floor(px), Math.floor(py)];
  const [fx, fy] = [px - x0, py - y0];
  const at = 3 * (y0 * width + x0);
  for (let c = 0; c < 3; c++) {
    const top = data[at + c] * (1 - fx) + data[at + 3 + c] * fx;
    const bottom = data[at + 3 * width + c] * (1 - fx) + data[at + 3 * width + 3 + c] * fx;
    out[i + c] = shade * (top * (1 - fy) + bottom * fy);
  }
}
