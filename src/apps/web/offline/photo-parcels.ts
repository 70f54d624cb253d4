import type { Parcel } from './outbox.ts';

/** Pictures as parcels, each once, with the hashes by which the bench will know them. */
export async function photoParcels(
  files: readonly File[],
): Promise<{ readonly parcels: readonly Pick<Parcel, 'said' | 'content'>[]; readonly hashes: readonly string[] }> {
  const byHash = new Map<string, File>();
  for (const file of files) byHash.set(await hashOf(file), file);
  const parcels = [...byHash].map(([hash, file]) => ({
    said: `a photo, ${file.name}`,
    content: { what: 'photo' as const, name: file.name, hash, picture: new Blob([file], { type: file.type }) },
  }));
  return { parcels, hashes: [...byHash.keys()] };
}

/** SHA-256 in hexadecimal, as the bench names its photos. */
async function hashOf(file: Blob): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', await file.arrayBuffer());
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
