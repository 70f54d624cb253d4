export type Wav =
  | { readonly ok: true; readonly sampleRate: number; readonly channels: readonly Float64Array[] }
  | { readonly ok: false; readonly code: 'not-a-wav' | 'unsupported-samples' | 'no-samples' };

/** Samples of a RIFF WAVE file (PCM of 8, 16, 24, 32 bits, or floats of 32 and 64), one array a channel, within ±1. */
export function readWav(bytes: Uint8Array): Wav {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const word = (at: number): string => String.fromCharCode(...bytes.subarray(at, at + 4));
  if (bytes.length < 12 || word(0) !== 'RIFF' || word(8) !== 'WAVE') return { ok: false, code: 'not-a-wav' };
  let format: Format | undefined;
  for (let at = 12; at + 8 <= bytes.length;) {
    const length = view.getUint32(at + 4, true);
    const body = at + 8;
    if (word(at) === 'fmt ' && body + 16 <= bytes.length) format = formatAt(view, body, length);
    if (word(at) === 'data')
      return format ? samplesAt(view, body, Math.min(length, bytes.length - body), format) : { ok: false, code: 'not-a-wav' };
    at = body + length + (length % 2);
  }
  return { ok: false, code: format ? 'no-samples' : 'not-a-wav' };
}

interface Format {
  readonly float: boolean;
  readonly channels: number;
  readonly sampleRate: number;
  readonly bits: number;
}

/** Format 1 is whole numbers, 3 floats; 0xFFFE has the true one at the start of its GUID. */
function formatAt(view: DataView, at: number, length: number): Format {
  const tag = view.getUint16(at, true);
  const own = tag === 0xfffe && length >= 26 && at + 26 <= view.byteLength ? view.getUint16(at + 24, true) : tag;
  return {
    float: own === 3,
    channels: own === 1 || own === 3 ? view.getUint16(at + 2, true) : 0,
    sampleRate: view.getUint32(at + 4, true),
    bits: view.getUint16(at + 14, true),
  };
}

function samplesAt(view: DataView, start: number, length: number, { float, channels, sampleRate, bits }: Format): Wav {
  const read = reader(view, float, bits);
  if (!read || channels < 1 || sampleRate < 1) return { ok: false, code: 'unsupported-samples' };
  const size = bits / 8;
  const frames = Math.floor(length / (size * channels));
  if (frames === 0) return { ok: false, code: 'no-samples' };
  const out = Array.from({ length: channels }, (_, channel) =>
    Float64Array.from({ length: frames }, (__, i) => read(start + (i * channels + channel) * size)),
  );
  return { ok: true, sampleRate, channels: out };
}

function reader(view: DataView, float: boolean, bits: number): ((at: number) => number) | undefined {
  if (float) return bits === 32 ? (at) => view.getFloat32(at, true) : bits === 64 ? (at) => view.getFloat64(at, true) : undefined;
  if (bits === 8) return (at) => (view.getUint8(at) - 128) / 128;
  if (bits === 16) return (at) => view.getInt16(at, true) / 32_768;
  if (bits === 24) return (at) => ((view.getInt8(at + 2) << 16) | view.getUint16(at, true)) / 8_388_608;
  return bits === 32 ? (at) => view.getInt32(at, true) / 2_147_483_648 : undefined;
}
