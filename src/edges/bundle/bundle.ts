import { createHash } from 'node:crypto';
import { parseEvent, type AnyEvent } from '../../bench/events/index.ts';

/** The version of the bundle that this code writes; it reads all versions up to it. */
export const BUNDLE_VERSION = 1;
export const BUNDLE_FORMAT = 'salvor-bench';

export interface BundleManifest {
  readonly format: string;
  readonly version: number;
  readonly events: number;
  readonly photos: number;
  /** SHA-256 of events.jsonl. */
  readonly events_sha256: string;
}

export interface BundleContents {
  readonly events: readonly AnyEvent[];
  readonly photos: readonly { readonly name: string; readonly bytes: Uint8Array }[];
}

/** `detail` is a clause: what is wrong with it, and where. */
export interface BundleRefusal {
  readonly ok: false;
  readonly code:
    | 'bundle-not-a-zip'
    | 'bundle-too-large'
    | 'bundle-incomplete'
    | 'bundle-newer'
    | 'bundle-not-ours'
    | 'bundle-damaged'
    | 'bundle-bad-event';
  readonly detail: string;
}

export type BundleResult = ({ readonly ok: true } & BundleContents) | BundleRefusal;

/** The files of a bundle by name, wherever they come from. */
export type BundleFiles = ReadonlyMap<string, Uint8Array>;

const MANIFEST = 'manifest.json';
const EVENTS = 'events.jsonl';
const PHOTO = /^photos\/([0-9a-f]{64})\.(jpg|png|webp)$/;

export const refuse = (code: BundleRefusal['code'], detail: string): BundleRefusal => ({ ok: false, code, detail });
export const sha256 = (bytes: Uint8Array | string): string => createHash('sha256').update(bytes).digest('hex');

/** Whether a file of this name belongs into a bundle; anything else is left alone, a path that leads elsewhere first of all. */
export const isBundleFile = (name: string): boolean => name === MANIFEST || name === EVENTS || PHOTO.test(name);

/** The files of a bundle with these events and photos. */
export function bundleFiles(events: readonly AnyEvent[], photos: readonly { name: string; bytes: Uint8Array }[]): Map<string, Uint8Array> {
  const encode = (text: string): Uint8Array => new TextEncoder().encode(text);
  const lines = encode(events.map((event) => `${JSON.stringify(withoutMark(event))}\n`).join(''));
  const manifest: BundleManifest = {
    format: BUNDLE_FORMAT,
    version: BUNDLE_VERSION,
    events: events.length,
    photos: photos.length,
    events_sha256: sha256(lines),
  };
  return new Map([
    [MANIFEST, encode(`${JSON.stringify(manifest, null, 2)}\n`)],
    [EVENTS, lines],
    ...photos.map(({ name, bytes }) => [`photos/${name}`, bytes] as const),
  ]);
}

/** "foreign" is a mark of this program's own; the event goes out as it came in. */
const withoutMark = ({ id, at, device, version, kind, body }: AnyEvent): object => ({ id, at, device, version, kind, body });

/** What the files hold, each part checked against the manifest and each event against its schema. */
export function bundleContents(files: BundleFiles): BundleResult {
  const manifest = readManifest(files.get(MANIFEST));
  if ('ok' in manifest) return manifest;
  const lines = files.get(EVENTS);
  if (!lines) return refuse('bundle-incomplete', `it holds no ${EVENTS}`);
  if (sha256(lines) !== manifest.events_sha256) return refuse('bundle-damaged', `${EVENTS} is not what ${MANIFEST} says it is`);
  const events = readEvents(new TextDecoder().decode(lines));
  if ('ok' in events) return events;
  if (events.length !== manifest.events)
    return refuse('bundle-damaged', `${EVENTS} has ${events.length} events, ${MANIFEST} says ${manifest.events}`);
  return withPhotos(files, manifest, events);
}

function readManifest(bytes: Uint8Array | undefined): BundleManifest | BundleRefusal {
  if (!bytes) return refuse('bundle-incomplete', `it holds no ${MANIFEST}`);
  const manifest = parseJson(new TextDecoder().decode(bytes)) as Partial<BundleManifest> | null | undefined;
  if (manifest?.format !== BUNDLE_FORMAT) return refuse('bundle-not-ours', `${MANIFEST} does not say "format": "${BUNDLE_FORMAT}"`);
  if (typeof manifest.version !== 'number' || manifest.version > BUNDLE_VERSION)
    return refuse('bundle-newer', `it is of version ${manifest.version}, this Salvor reads up to ${BUNDLE_VERSION}`);
  return manifest as BundleManifest;
}

function readEvents(text: string): AnyEvent[] | BundleRefusal {
  const events: AnyEvent[] = [];
  const lines = text.split('\n');
  for (const [i, line] of lines.entries()) {
    if (line === '' && i === lines.length - 1) break;
    const where = `${EVENTS}, line ${i + 1}`;
    const value = parseJson(line);
    if (value === undefined) return refuse('bundle-bad-event', `${where} is not JSON`);
    const parsed = parseEvent(value);
    if (!parsed.ok) return refuse('bundle-bad-event', `${where}: ${parsed.field} ${parsed.message}`);
    events.push(parsed.event);
  }
  return events;
}

function withPhotos(files: BundleFiles, manifest: BundleManifest, events: AnyEvent[]): BundleResult {
  const photos: { name: string; bytes: Uint8Array }[] = [];
  for (const [name, bytes] of files) {
    const hash = PHOTO.exec(name)?.[1];
    if (hash === undefined) continue;
    if (sha256(bytes) !== hash) return refuse('bundle-damaged', `${name} is not the photo that its name says`);
    photos.push({ name: name.slice('photos/'.length), bytes });
  }
  if (photos.length !== manifest.photos)
    return refuse('bundle-incomplete', `it holds ${photos.length} photos, ${MANIFEST} says ${manifest.photos}`);
  return { ok: true, events, photos };
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
