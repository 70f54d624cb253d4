import { createHash, randomBytes } from 'node:crypto';
import { chmodSync } from 'node:fs';
import Database from 'better-sqlite3';
import type { Clock, DeviceBook, JoinedDevice, JoinRefusal, Role } from '../../bench/ports.ts';

export const INVITE_MINUTES = 10;
const SEEN_EVERY_MS = 3_600_000;

const SCHEMA = `
CREATE TABLE IF NOT EXISTS device (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  role TEXT NOT NULL,
  key_hash TEXT NOT NULL UNIQUE,
  joined_at TEXT NOT NULL,
  last_seen_at TEXT,
  revoked_at TEXT
) STRICT, WITHOUT ROWID;
CREATE UNIQUE INDEX IF NOT EXISTS device_name ON device (name) WHERE revoked_at IS NULL;
CREATE TABLE IF NOT EXISTS invite (
  secret_hash TEXT PRIMARY KEY,
  role TEXT NOT NULL,
  expires_at TEXT NOT NULL,
  used_at TEXT
) STRICT, WITHOUT ROWID;
`;

interface Row {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly joined_at: string;
  readonly last_seen_at: string | null;
}

const hashOf = (secret: string): string => createHash('sha256').update(secret).digest('hex');
/** 256 bits, which cannot be guessed; that is why a plain hash of it is enough. */
const newSecret = (): string => randomBytes(32).toString('base64url');
const deviceOf = ({ id, name, role, joined_at, last_seen_at }: Row): JoinedDevice => ({
  id,
  name,
  role,
  joinedAt: joined_at,
  lastSeenAt: last_seen_at,
});

/**
 * The devices of a bench in a database file of their own, apart from the log, so that no bundle and no backup carries them. What one process
 * revokes holds for all others at once.
 */
export function openDeviceBook(file: string, clock: Clock): DeviceBook {
  const database = new Database(file, { timeout: 10_000 });
  chmodSync(file, 0o600);
  database.pragma('journal_mode = WAL');
  database.pragma('synchronous = FULL');
  database.exec(SCHEMA);
  return new BookOfDevices(database, clock);
}

class BookOfDevices implements DeviceBook {
  constructor(
    private readonly database: Database.Database,
    private readonly clock: Clock,
  ) {}

  private now(): string {
    return this.clock.now().toISOString();
  }

  list(): readonly JoinedDevice[] {
    const rows = this.database.prepare('SELECT * FROM device WHERE revoked_at IS NULL ORDER BY joined_at, id').all() as Row[];
    return rows.map(deviceOf);
  }

  invite(role: Role): { secret: string; expiresAt: string } {
    const secret = newSecret();
    const expiresAt = new Date(this.clock.now().getTime() + INVITE_MINUTES * 60_000).toISOString();
    this.database.prepare('DELETE FROM invite WHERE expires_at <= ?').run(this.now());
    this.database.prepare('INSERT INTO invite (secret_hash, role, expires_at) VALUES (?, ?, ?)').run(hashOf(secret), role, expiresAt);
    return { secret, expiresAt };
  }

  join(secret: string, name: string): { ok: true; device: JoinedDevice; key: string } | JoinRefusal {
    return this.database.transaction(() => this.joinNow(secret, name)).immediate();
  }

  private joinNow(secret: string, name: string): { ok: true; device: JoinedDevice; key: string } | JoinRefusal {
    const now = this.now();
    const invite = this.database
      .prepare('SELECT role FROM invite WHERE secret_hash = ? AND used_at IS NULL AND expires_at > ?')
      .get(hashOf(secret), now) as { role: Role } | undefined;
    if (!invite) return { ok: false, code: 'invite-unknown', detail: 'it was used already, is older than ten minutes, or never was' };
    if (this.list().some((device) => device.name === name)) return { ok: false, code: 'device-name-taken', detail: name };
    this.database.prepare('UPDATE invite SET used_at = ? WHERE secret_hash = ?').run(now, hashOf(secret));
    const key = newSecret();
    const row: Row = { id: this.clock.newId(), name, role: invite.role, joined_at: now, last_seen_at: null };
    this.database
      .prepare('INSERT INTO device (id, name, role, key_hash, joined_at) VALUES (?, ?, ?, ?, ?)')
      .run(row.id, row.name, row.role, hashOf(key), row.joined_at);
    return { ok: true, device: deviceOf(row), key };
  }

  deviceOf(key: string): JoinedDevice | null {
    const row = this.database.prepare('SELECT * FROM device WHERE key_hash = ? AND revoked_at IS NULL').get(hashOf(key)) as Row | undefined;
    if (!row) return null;
    this.see(row);
    return deviceOf(row);
  }

  private see({ id, last_seen_at }: Row): void {
    const now = this.clock.now();
    if (last_seen_at !== null && now.getTime() - Date.parse(last_seen_at) < SEEN_EVERY_MS) return;
    this.database.prepare('UPDATE device SET last_seen_at = ? WHERE id = ?').run(now.toISOString(), id);
  }

  revoke(name: string): boolean {
    return (
      this.database.prepare('UPDATE device SET revoked_at = ? WHERE name = ? AND revoked_at IS NULL').run(this.now(), name).changes > 0
    );
  }

  close(): void {
    this.database.close();
  }
}
