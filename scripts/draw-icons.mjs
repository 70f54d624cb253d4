import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { ROOT } from './run.mjs';

/** Draws the icons of the app from `favicon.svg`: `node scripts/draw-icons.mjs`, after that picture was changed. */
const PUBLIC = join(ROOT, 'src/apps/web/public');
const svg = readFileSync(join(PUBLIC, 'favicon.svg'));
const GROUND = '#0a6a5c';

const drawn = (size) => sharp(svg, { density: (72 * size) / 32 }).resize(size, size);
for (const size of [192, 512])
  await drawn(size)
    .png()
    .toFile(join(PUBLIC, `icon-${size}.png`));

// A mask may cut off all but the middle four fifths: the picture stands in them, on a ground that goes to the edge.
const inner = await drawn(410).png().toBuffer();
await sharp({ create: { width: 512, height: 512, channels: 3, background: GROUND } })
  .composite([{ input: inner, gravity: 'centre' }])
  .png()
  .toFile(join(PUBLIC, 'icon-512-maskable.png'));
