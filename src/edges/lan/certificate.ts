import { X509Certificate } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { generate } from 'selfsigned';
import { writeWhole } from '../files/write-whole.ts';

export interface Certificate {
  /** PEM. */
  readonly cert: string;
  /** PEM. */
  readonly key: string;
  /** SHA-256, as browsers show it: "AB:CD:…". */
  readonly fingerprint: string;
  /** It was made just now: a device that knew an older one will ask whether to go on. */
  readonly isNew: boolean;
}

/** Names and addresses under which this machine is reached. */
export interface OwnNames {
  readonly names: readonly string[];
  readonly addresses: readonly string[];
}

/** Some phones take no server certificate that is valid for more than 825 days (from memory). */
const VALID_DAYS = 820;
const RENEW_DAYS = 30;
const DAY_MS = 86_400_000;

/**
 * The certificate of the bench: made at first use, kept in `dir`, and made anew with the same key only when it ends within thirty days or an
 * address of this machine is not in it. It signs for itself: who it is, is told by its fingerprint.
 */
export async function ensureCertificate(dir: string, own: OwnNames, now: Date): Promise<Certificate> {
  const key = await readFile(join(dir, 'key.pem'), 'utf8').catch(() => null);
  const cert = await readFile(join(dir, 'certificate.pem'), 'utf8').catch(() => null);
  if (key && cert && serves(cert, own, now)) return { cert, key, fingerprint: fingerprintOf(cert), isNew: false };
  const publicKey = key && cert ? new X509Certificate(cert).publicKey.export({ type: 'spki', format: 'pem' }).toString() : null;
  const made = await makeCertificate(own, now, key && publicKey ? { privateKey: key, publicKey } : null);
  await writeWhole(join(dir, 'key.pem'), made.key, 0o600);
  await writeWhole(join(dir, 'certificate.pem'), made.cert);
  return { ...made, fingerprint: fingerprintOf(made.cert), isNew: true };
}

const fingerprintOf = (cert: string): string => new X509Certificate(cert).fingerprint256;

function serves(cert: string, { names, addresses }: OwnNames, now: Date): boolean {
  const parsed = new X509Certificate(cert);
  const isTimely = new Date(parsed.validFrom) <= now && Date.parse(parsed.validTo) - now.getTime() > RENEW_DAYS * DAY_MS;
  return isTimely && names.every((name) => parsed.checkHost(name)) && addresses.every((address) => parsed.checkIP(address));
}

async function makeCertificate(
  { names, addresses }: OwnNames,
  now: Date,
  keyPair: { privateKey: string; publicKey: string } | null,
): Promise<{ cert: string; key: string }> {
  // A day earlier, for phones whose clock is behind.
  const notBeforeDate = new Date(now.getTime() - DAY_MS);
  const made = await generate([{ name: 'commonName', value: 'Salvor bench' }], {
    keyType: 'ec',
    curve: 'P-256',
    algorithm: 'sha256',
    notBeforeDate,
    notAfterDate: new Date(notBeforeDate.getTime() + VALID_DAYS * DAY_MS),
    ...(keyPair ? { keyPair } : {}),
    extensions: [
      // Phones let a person trust only what may sign. A length of 0 allows no authority below it.
      { name: 'basicConstraints', cA: true, pathLenConstraint: 0, critical: true },
      { name: 'keyUsage', digitalSignature: true, keyCertSign: true, critical: true },
      { name: 'extKeyUsage', serverAuth: true },
      {
        name: 'subjectAltName',
        altNames: [...names.map((value) => ({ type: 2, value }) as const), ...addresses.map((ip) => ({ type: 7, ip }) as const)],
      },
    ],
  });
  return { cert: made.cert, key: made.private };
}
