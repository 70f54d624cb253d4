import { createPrivateKey, X509Certificate } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { ensureCertificate } from './certificate.ts';
import { ownNames } from './own-names.ts';

const NOW = new Date('2026-05-01T09:00:00Z');
const OWN = { names: ['localhost', 'desk.local'], addresses: ['192.0.2.7', '2001:db8::7'] };
const later = (days: number): Date => new Date(NOW.getTime() + days * 86_400_000);

let dir: string;
beforeEach(() => (dir = mkdtempSync(join(tmpdir(), 'salvor-lan-'))));
afterEach(() => rmSync(dir, { recursive: true, force: true }));

it('is made at first use, for every name and address, with a key that only its owner may read', async () => {
  const made = await ensureCertificate(dir, OWN, NOW);
  const parsed = new X509Certificate(made.cert);
  expect(made.isNew).toBe(true);
  expect(made.fingerprint).toMatch(/^(?:[0-9A-F]{2}:){31}[0-9A-F]{2}$/);
  expect(made.fingerprint).toBe(parsed.fingerprint256);
  expect([parsed.checkHost('desk.local'), parsed.checkIP('192.0.2.7'), parsed.checkIP('2001:db8::7')].every(Boolean)).toBe(true);
  expect(parsed.checkPrivateKey(createPrivateKey(made.key))).toBe(true);
  expect(parsed.verify(parsed.publicKey)).toBe(true);
  expect(statSync(join(dir, 'key.pem')).mode & 0o077).toBe(0);
});

it('stays the same while it serves', async () => {
  const made = await ensureCertificate(dir, OWN, NOW);
  expect(await ensureCertificate(dir, OWN, later(700))).toEqual({ ...made, isNew: false });
});

it('is made anew with the same key when it ends soon or an address is new', async () => {
  const made = await ensureCertificate(dir, OWN, NOW);
  const moved = await ensureCertificate(dir, { ...OWN, addresses: ['192.0.2.8'] }, NOW);
  expect([moved.isNew, moved.key]).toEqual([true, made.key]);
  expect(moved.fingerprint).not.toBe(made.fingerprint);
  expect(new X509Certificate(moved.cert).checkPrivateKey(createPrivateKey(made.key))).toBe(true);
  const renewed = await ensureCertificate(dir, { ...OWN, addresses: ['192.0.2.8'] }, later(800));
  expect([renewed.isNew, renewed.key]).toEqual([true, made.key]);
  expect(readFileSync(join(dir, 'certificate.pem'), 'utf8')).toBe(renewed.cert);
});

it('names this machine as it is reached, never by a loopback address', () => {
  const { names, addresses } = ownNames();
  expect(names).toContain('localhost');
  expect(addresses.filter((address) => address.startsWith('127.') || address === '::1')).toEqual([]);
});
