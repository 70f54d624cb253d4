import { isNestedDeeperThan, MODEL_BUNDLE_FORMAT, MODEL_BUNDLE_VERSION, ModelBundle, photosOf } from '../../bench/events/index.ts';
import type { ModelBundleFormat, PhotoStore } from '../../bench/ports.ts';
import { PHOTO, photoRefusal, refuse, type BundleFiles, type BundleRefusal } from './bundle.ts';
import { pack, photoName, readZip, type FileRule } from './zip-bundle.ts';

const MODEL = 'model.json';
const MODEL_BYTES = 32e6;
const PHOTO_BYTES = 40e6;
/** A model file has some eight levels. */
const MOST_LEVELS = 100;

const FILES: FileRule = {
  belongs: (name) => name === MODEL || PHOTO.test(name),
  limit: (name) => (name === MODEL ? MODEL_BYTES : PHOTO_BYTES),
  largest: MODEL_BYTES,
};

type Read = Awaited<ReturnType<ModelBundleFormat['read']>>;

/** A grown model with its photos as one zip: `model.json`, and `photos/<hash>.<ending>`. The same model gives the same bytes. */
export const modelBundles: ModelBundleFormat = {
  async write(bundle, photos) {
    const originals = await Promise.all(photosOf(bundle).map((hash) => photoFile(photos, hash)));
    const text = new TextEncoder().encode(`${JSON.stringify(bundle, null, 2)}\n`);
    return pack(new Map([[MODEL, text], ...originals.flat()]));
  },
  read: (bytes) => readZip(bytes, FILES, contentsOf),
};

async function photoFile(photos: PhotoStore, hash: string): Promise<[string, Uint8Array][]> {
  const found = await photos.get(hash, 'original');
  return found ? [[`photos/${photoName(hash, found.mediaType)}`, found.bytes]] : [];
}

/** Every photo is of the hash that its name says, and is named by a fact; what is not named is not taken. */
function contentsOf(files: BundleFiles): Read {
  const text = files.get(MODEL);
  if (!text) return refuse('bundle-incomplete', `it holds no ${MODEL}`, { file: MODEL });
  const read = bundleIn(text);
  if (!read.ok) return read;
  const photos = [...files].filter(([name]) => PHOTO.test(name));
  const refusal = photoRefusal(photos);
  if (refusal) return refusal;
  const named = new Set(photosOf(read.bundle));
  const wanted = photos.flatMap(([name, bytes]) => (named.has(hashIn(name)) ? [{ name: name.slice('photos/'.length), bytes }] : []));
  return { ok: true, bundle: read.bundle, photos: wanted };
}

const hashIn = (name: string): string => name.slice('photos/'.length).replace(/\.[^.]+$/, '');

function bundleIn(text: Uint8Array): { readonly ok: true; readonly bundle: ModelBundle } | BundleRefusal {
  const value = parsed(text);
  const place = { file: MODEL };
  if (value === undefined || isNestedDeeperThan(MOST_LEVELS, value))
    return refuse('bundle-damaged', `${MODEL} is no JSON that a model could be`, place);
  const { format, version } = (value ?? {}) as { readonly format?: unknown; readonly version?: unknown };
  if (format !== MODEL_BUNDLE_FORMAT) return refuse('bundle-not-ours', `${MODEL} does not say "format": "${MODEL_BUNDLE_FORMAT}"`, place);
  if (typeof version === 'number' && version > MODEL_BUNDLE_VERSION)
    return refuse('bundle-newer', `it is of version ${version}, and this Salvor reads up to ${MODEL_BUNDLE_VERSION}`, place);
  const bundle = ModelBundle.safeParse(value);
  if (bundle.success) return { ok: true, bundle: bundle.data };
  const { path, message } = bundle.error.issues[0]!;
  return refuse('bundle-bad-event', `${MODEL}, ${path.map(String).join('.')} ${message}`, { ...place, field: path.map(String).join('.') });
}

function parsed(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes)) as unknown;
  } catch {
    return undefined;
  }
}
