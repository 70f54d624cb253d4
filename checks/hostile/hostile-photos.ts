import { deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { randomStream } from '../../src/core/numeric/index.ts';

/** Something that is sent to the bench and must not be taken. */
export interface Hostile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

const file = (name: string, bytes: Uint8Array | string): Hostile => ({
  name,
  bytes: typeof bytes === 'string' ? Buffer.from(bytes) : bytes,
});

const crcTable = Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});
const crc32 = (bytes: Uint8Array): number =>
  (bytes.reduce((crc, byte) => crcTable[(crc ^ byte) & 0xff]! ^ (crc >>> 8), 0xffffffff) ^ 0xffffffff) >>> 0;

function chunk(type: string, body: Uint8Array): Buffer {
  const head = Buffer.alloc(4);
  head.writeUInt32BE(body.length);
  const named = Buffer.concat([Buffer.from(type), body]);
  const tail = Buffer.alloc(4);
  tail.writeUInt32BE(crc32(named));
  return Buffer.concat([head, named, tail]);
}

/** A PNG (W3C 2003) that says it has these sides, whatever its data hold. */
export function pngClaiming(width: number, height: number, data: Uint8Array = deflateSync(Buffer.alloc(1000))): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 2, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', header),
    chunk('IDAT', data),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** A JPEG whose frame header says another size; the marker of the frame is FF C0 or FF C2 (ITU-T T.81, B.2.2). */
function jpegClaiming(jpeg: Buffer, width: number, height: number): Buffer {
  const copy = Buffer.from(jpeg);
  const at = Math.max(copy.indexOf('ffc0', 0, 'hex'), copy.indexOf('ffc2', 0, 'hex'));
  copy.writeUInt16BE(height, at + 5);
  copy.writeUInt16BE(width, at + 7);
  return copy;
}

/** Pictures that are none, or that are made to hurt: empty, mislabelled, cut off, of a size that would fill the memory. */
export async function hostilePhotos(seed: string): Promise<Hostile[]> {
  const random = randomStream(seed);
  const noise = (length: number): Buffer => Buffer.from(Array.from({ length }, () => Math.floor(random() * 256)));
  const plain = sharp({
    create: { width: 300, height: 200, channels: 3, background: '#345', noise: { type: 'gaussian', mean: 128, sigma: 40 } },
  });
  const [jpeg, png, webp, gif] = await Promise.all(
    [plain.clone().jpeg(), plain.clone().png(), plain.clone().webp(), plain.clone().gif()].map((made) => made.toBuffer()),
  );
  const cutOff = [jpeg!, png!, webp!].flatMap((whole, kind) =>
    [0.02, 0.3, 0.6].map((share) =>
      file(`cut-off-${share}.${['jpg', 'png', 'webp'][kind]}`, whole.subarray(0, Math.floor(whole.length * share))),
    ),
  );
  return [
    file('empty.jpg', ''),
    file('text.jpg', 'this is no picture'),
    file('page.png', '<!doctype html><script>alert(1)</script>'),
    file('vector.jpg', '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>'),
    file('vector.svg', '<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>'),
    file('archive.jpg', Buffer.concat([Buffer.from('PK\x03\x04'), noise(500)])),
    file('program.png', Buffer.concat([Buffer.from('\x7fELF'), noise(500)])),
    file('jpeg-called.png', jpeg!),
    file('png-called.jpg', png!),
    file('moving.gif', gif!),
    file('noise-behind-a-jpeg-head.jpg', Buffer.concat([jpeg!.subarray(0, 20), noise(5000)])),
    file('noise-behind-a-png-head.png', Buffer.concat([png!.subarray(0, 33), noise(5000)])),
    file('sixty-thousand-square.png', pngClaiming(60_000, 60_000)),
    file('longest-side.png', pngClaiming(2 ** 31 - 1, 2 ** 31 - 1)),
    file('no-side.png', pngClaiming(0, 0)),
    file('bomb-of-zeros.png', pngClaiming(20_000, 20_000, deflateSync(Buffer.alloc(50_000_000), { level: 9 }))),
    file('sixty-five-thousand-square.jpg', jpegClaiming(jpeg!, 65_000, 65_000)),
    file('more-megabytes-than-taken.jpg', Buffer.concat([jpeg!, Buffer.alloc(41_000_000)])),
    ...cutOff,
  ];
}
