import { createHash } from 'node:crypto';
import { isForeign, parseEvent, type AnyEvent } from '../../bench/events/index.ts';

/** The newest version of the bundle; this code reads all versions up to it. */
export const BUNDLE_VERSION = 2;
/** Version of a bundle with its photos in it. */
const WITH_PHOTOS = 1;
/** Version of a backup: its photos lie beside it, in a folder that many share. */
const PHOTOS_BESIDE = 2;
export const BUNDLE_FORMAT = 'salvor-bench';

export interface BundleManifest {
  readonly format: string;
  readonly version: number;
  readonly events: number;
  readonly photos: number;
  /** SHA-256 of events.jsonl. */
  readonly events_sha256: string;
}

/** What the manifest of a backup says beyond that. */
export interface BackupManifest extends BundleManifest {
  /** SHA-256 of photos.txt. */
  readonly photos_sha256: string;
  /** How many of the events are of a kind or version that the writer did not know either. */
  readonly not_understood: number;
  readonly made_at: string;
  /** Version of the program that wrote it. */
  readonly salvor: string;
}

export interface BundleContents {
  readonly events: readonly AnyEvent[];
  readonly photos: readonly { readonly name: string; readonly bytes: Uint8Array }[];
}

/** `detail` is a clause: what is wrong with it, and where; the fields say the place once more for a program. */
export interface BundleRefusal {
  readonly ok: false;
  readonly code:
    | 'bundle-not-a-zip'
    | 'bundle-too-large'
    | 'bundle-incomplete'
    | 'bundle-newer'
    | 'bundle-not-ours'
    | 'bundle-damaged'
    | 'bundle-bad-event'
    | 'bundle-photos-beside';
  readonly detail: string;
  /** Name inside the bundle. */
  readonly file?: string;
  /** Line of events.jsonl, from 1. */
  readonly line?: number;
  /** Where in the event of that line, such as `body.price_minor`. */
  readonly field?: string;
}

export type BundleResult = ({ readonly ok: true } & BundleContents) | BundleRefusal;

/** The files of a bundle by name, wherever they come from. */
export type BundleFiles = ReadonlyMap<string, Uint8Array>;

const MANIFEST = 'manifest.json';
const EVENTS = 'events.jsonl';
const PHOTOS = 'photos/';
const PHOTO_LIST = 'photos.txt';
/** Name of a photo in a bundle. */
export const PHOTO = /^photos\/[A-Za-z0-9][A-Za-z0-9_.-]{0,99}\.(jpe?g|png|webp|JPE?G|PNG|WEBP)$/;
const HASHED = /^photos\/([0-9a-f]{64})\.[^.]+$/;
const LISTED = /^[0-9a-f]{64}\.(?:jpg|png|webp)$/;

export const refuse = (
  code: BundleRefusal['code'],
  detail: string,
  place: Pick<BundleRefusal, 'file' | 'line' | 'field'> = {},
): BundleRefusal => ({ ok: false, code, detail, ...place });
export const sha256 = (bytes: Uint8Array | string): string => createHash('sha256').update(bytes).digest('hex');

/** Whether a file of this name belongs into a bundle; anything else is left alone, a path that leads elsewhere first of all. */
export const isBundleFile = (name: string): boolean => name === MANIFEST || name === EVENTS || name === PHOTO_LIST || PHOTO.test(name);

/** Bytes that a file of a bundle may have: a photo as many as the bench takes, the log some million events. */
export function sizeLimit(name: string): number {
  if (name.startsWith(PHOTOS)) return 40e6;
  if (name === PHOTO_LIST) return 64e6;
  return name === EVENTS ? 256e6 : 1e6;
}

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);
const linesOf = (events: readonly AnyEvent[]): Uint8Array =>
  encode(events.map((event) => `${JSON.stringify(withoutMark(event))}\n`).join(''));
const manifestFile = (manifest: BundleManifest): [string, Uint8Array] => [MANIFEST, encode(`${JSON.stringify(manifest, null, 2)}\n`)];

/** The files of a bundle with these events and photos. */
export function bundleFiles(events: readonly AnyEvent[], photos: readonly { name: string; bytes: Uint8Array }[]): Map<string, Uint8Array> {
  const lines = linesOf(events);
  const manifest: BundleManifest = {
    format: BUNDLE_FORMAT,
    version: WITH_PHOTOS,
    events: events.length,
    photos: photos.length,
    events_sha256: sha256(lines),
  };
  return new Map([manifestFile(manifest), [EVENTS, lines], ...photos.map(({ name, bytes }) => [`${PHOTOS}${name}`, bytes] as const)]);
}

/** The files of a backup with these events, of photos with these names that lie beside it. */
export function backupFiles(
  events: readonly AnyEvent[],
  photoNames: readonly string[],
  writer: Pick<BackupManifest, 'made_at' | 'salvor'>,
): Map<string, Uint8Array> {
  const lines = linesOf(events);
  const list = encode(photoNames.map((name) => `${name}\n`).join(''));
  const manifest: BackupManifest = {
    format: BUNDLE_FORMAT,
    version: PHOTOS_BESIDE,
    events: events.length,
    photos: photoNames.length,
    events_sha256: sha256(lines),
    photos_sha256: sha256(list),
    not_understood: events.filter(isForeign).length,
    ...writer,
  };
  return new Map([manifestFile(manifest), [EVENTS, lines], [PHOTO_LIST, list]]);
}

/** "foreign" is a mark of this program's own; the event goes out as it came in. */
const withoutMark = ({ id, at, device, version, kind, body }: AnyEvent): object => ({ id, at, device, version, kind, body });

/**
 * What the files hold, each part checked against the manifest and each event against its schema. Without a manifest, as in a folder that a
 * person keeps by hand, what is there is taken to be all. A backup is refused: alone it lacks its photos.
 */
export function bundleContents(files: BundleFiles, needsManifest: boolean): BundleResult {
  const header = readManifest(files.get(MANIFEST), needsManifest);
  if (!header.ok) return header;
  if (header.manifest?.version === PHOTOS_BESIDE)
    return refuse('bundle-photos-beside', 'it is a backup, whose photos lie beside it: bring it back with salvor restore');
  const read = eventsIn(files, header.manifest);
  if (!read.ok) return read;
  const photos = [...files].filter(([name]) => name.startsWith(PHOTOS));
  const refusal = photoRefusal(photos) ?? (header.manifest && countRefusal(header.manifest, read.events.length, photos.length));
  return refusal ?? { ...read, photos: photos.map(([name, bytes]) => ({ name: name.slice(PHOTOS.length), bytes })) };
}

export interface BackupContents {
  readonly ok: true;
  readonly events: readonly AnyEvent[];
  /** Names of the photos that belong to it, `<hash>.<ending>`. */
  readonly photoNames: readonly string[];
}

/** What the files of a backup hold, checked as those of a bundle are. One that says more than this program understands is refused as newer. */
export function backupContents(files: BundleFiles): BackupContents | BundleRefusal {
  const header = readManifest(files.get(MANIFEST), true);
  if (!header.ok) return header;
  const said = header.manifest!;
  if (said.version !== PHOTOS_BESIDE) return refuse('bundle-not-ours', 'it is a bundle and no backup: bring it in with salvor import');
  const read = eventsIn(files, said);
  if (!read.ok) return read;
  const list = files.get(PHOTO_LIST);
  if (!list || sha256(list) !== said.photos_sha256)
    return refuse('bundle-damaged', `${PHOTO_LIST} is not what ${MANIFEST} says it is`, { file: PHOTO_LIST });
  const photoNames = new TextDecoder().decode(list).split('\n').slice(0, -1);
  if (!photoNames.every((name) => LISTED.test(name)))
    return refuse('bundle-damaged', `${PHOTO_LIST} names something that is no photo`, { file: PHOTO_LIST });
  return newerRefusal(said, read.events) ?? countRefusal(said, read.events.length, photoNames.length) ?? { ...read, photoNames };
}

function newerRefusal(said: Said, events: readonly AnyEvent[]): BundleRefusal | undefined {
  const strange = events.filter(isForeign);
  if (strange.length <= Number(said.not_understood)) return undefined;
  const { kind, version } = strange[0]!;
  const detail = `Salvor ${String(said.salvor)} wrote it, with events that this one does not know (the first is ${kind}, version ${version})`;
  return refuse('bundle-newer', `${detail}; bring it back with that version or a later one`);
}

function eventsIn(files: BundleFiles, said: Said | undefined): { readonly ok: true; readonly events: AnyEvent[] } | BundleRefusal {
  const lines = files.get(EVENTS);
  if (!lines) return refuse('bundle-incomplete', `it holds no ${EVENTS}`, { file: EVENTS });
  if (said && sha256(lines) !== said.events_sha256)
    return refuse('bundle-damaged', `${EVENTS} is not what ${MANIFEST} says it is`, { file: EVENTS });
  return readEvents(lines);
}

/** What a manifest says, nothing of it believed yet. */
type Said = Partial<Record<keyof BackupManifest, unknown>>;

function readManifest(bytes: Uint8Array | undefined, isNeeded: boolean): { readonly ok: true; readonly manifest?: Said } | BundleRefusal {
  const place = { file: MANIFEST };
  if (!bytes) return isNeeded ? refuse('bundle-incomplete', `it holds no ${MANIFEST}`, place) : { ok: true };
  const manifest = parseJson(new TextDecoder().decode(bytes)) as Said | null | undefined;
  if (manifest?.format !== BUNDLE_FORMAT) return refuse('bundle-not-ours', `${MANIFEST} does not say "format": "${BUNDLE_FORMAT}"`, place);
  const version = Number.isInteger(manifest.version) ? (manifest.version as number) : 0;
  if (version < 1) return refuse('bundle-not-ours', `${MANIFEST} says no version`, place);
  if (version > BUNDLE_VERSION)
    return refuse('bundle-newer', `it is of version ${version}, and this Salvor reads up to ${BUNDLE_VERSION}`, place);
  return { ok: true, manifest };
}

function countRefusal(said: Said, events: number, photos: number): BundleRefusal | undefined {
  if (said.events !== events) return refuse('bundle-incomplete', `it holds ${events} events, and ${MANIFEST} says ${String(said.events)}`);
  if (said.photos !== photos) return refuse('bundle-incomplete', `it holds ${photos} photos, and ${MANIFEST} says ${String(said.photos)}`);
  return undefined;
}

/** A photo that is named by a hash must have it. */
export function photoRefusal(photos: readonly (readonly [name: string, bytes: Uint8Array])[]): BundleRefusal | undefined {
  const wrong = photos.find(([name, bytes]) => {
    const hash = HASHED.exec(name)?.[1];
    return hash !== undefined && hash !== sha256(bytes);
  });
  return wrong && refuse('bundle-damaged', `${wrong[0]} is not the photo that its name says`, { file: wrong[0] });
}

function readEvents(bytes: Uint8Array): { readonly ok: true; readonly events: AnyEvent[] } | BundleRefusal {
  const text = parseUtf8(bytes);
  if (text === undefined) return refuse('bundle-damaged', `${EVENTS} is not text in UTF-8`, { file: EVENTS });
  const events: AnyEvent[] = [];
  const lines = text.split('\n');
  if (lines.at(-1) === '') lines.pop();
  for (const [index, line] of lines.entries()) {
    const place = { file: EVENTS, line: index + 1 };
    const value = parseJson(line);
    if (value === undefined) return refuse('bundle-bad-event', `${EVENTS}, line ${place.line} is not JSON`, place);
    const parsed = parseEvent(value);
    if (!parsed.ok) {
      const { field, message } = parsed;
      return refuse('bundle-bad-event', `${EVENTS}, line ${place.line}: ${field} ${message}`, { ...place, field });
    }
    events.push(parsed.event);
  }
  return { ok: true, events };
}

function parseUtf8(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
