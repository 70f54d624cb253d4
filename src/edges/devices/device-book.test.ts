import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Clock, DeviceBook } from '../../bench/ports.ts';
import { openDeviceBook } from './device-book.ts';

let dir: string;
let book: DeviceBook;
let minute: number;
let ids: number;
const clock: Clock = { now: () => new Date(Date.UTC(2026, 4, 1, 9, minute)), newId: () => `device-${(ids += 1)}` };
const file = (): string => join(dir, 'devices.sqlite');
beforeEach(() => {
  [minute, ids] = [0, 0];
  dir = mkdtempSync(join(tmpdir(), 'salvor-devices-'));
  book = openDeviceBook(file(), clock);
});
afterEach(() => {
  book.close();
  rmSync(dir, { recursive: true, force: true });
});

const join1 = (name: string, role: 'owner' | 'bench' | 'view' = 'bench'): string => {
  const joined = book.join(book.invite(role).secret, name);
  if (!joined.ok) throw new Error(joined.code);
  return joined.key;
};

describe('an invitation', () => {
  it('lets one device join, once', () => {
    const { secret, expiresAt } = book.invite('view');
    expect(expiresAt).toBe('2026-05-01T09:10:00.000Z');
    expect(book.join(secret, 'phone')).toMatchObject({ ok: true, device: { name: 'phone', role: 'view' } });
    expect(book.join(secret, 'other')).toMatchObject({ ok: false, code: 'invite-unknown' });
  });

  it('ends after ten minutes', () => {
    const { secret } = book.invite('bench');
    minute = 10;
    expect(book.join(secret, 'phone')).toMatchObject({ ok: false, code: 'invite-unknown' });
  });

  it('is not used up by a name that is taken', () => {
    join1('phone');
    const { secret } = book.invite('bench');
    expect(book.join(secret, 'phone')).toEqual({ ok: false, code: 'device-name-taken', detail: 'phone' });
    expect(book.join(secret, 'phone-2')).toMatchObject({ ok: true });
  });

  it('cannot be guessed from another one', () => {
    expect(book.invite('bench').secret).not.toBe(book.invite('bench').secret);
    expect(book.join('', 'phone')).toMatchObject({ ok: false });
  });
});

describe('a key', () => {
  it('names its device, here and in another process on the same file, until it is revoked', () => {
    const key = join1('phone');
    const other = openDeviceBook(file(), clock);
    expect(other.deviceOf(key)).toMatchObject({ name: 'phone', role: 'bench' });
    expect(book.deviceOf(`${key}x`)).toBeNull();
    expect(other.revoke('phone')).toBe(true);
    expect(book.deviceOf(key)).toBeNull();
    expect(book.list()).toEqual([]);
    expect(other.revoke('phone')).toBe(false);
    other.close();
  });

  it('leaves its name free after it was revoked', () => {
    join1('phone');
    book.revoke('phone');
    expect(book.deviceOf(join1('phone', 'view'))).toMatchObject({ role: 'view' });
  });

  it('tells when its device was last seen, to the hour', () => {
    const key = join1('phone');
    expect(book.list()[0]!.lastSeenAt).toBeNull();
    book.deviceOf(key);
    minute = 30;
    book.deviceOf(key);
    expect(book.list()[0]!.lastSeenAt).toBe('2026-05-01T09:00:00.000Z');
    minute = 61;
    book.deviceOf(key);
    expect(book.list()[0]!.lastSeenAt).toBe('2026-05-01T10:01:00.000Z');
  });

  it('does not stand in the file, nor does a secret, and only its owner may read that', () => {
    const { secret } = book.invite('bench');
    const key = join1('phone');
    book.close();
    const bytes = readFileSync(file());
    expect([bytes.includes(key), bytes.includes(secret)]).toEqual([false, false]);
    expect(statSync(file()).mode & 0o077).toBe(0);
    book = openDeviceBook(file(), clock);
  });
});
