import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { KEY_COOKIE } from '../../src/apps/server/admission.ts';
import type { Role } from '../../src/bench/ports.ts';
import { openApp, type OpenedApp } from '../interface/open-app.ts';
import { askNetwork, fromNetwork, hurriedClock, openRoutes, servedRoutes } from './open-routes.ts';

let opened: OpenedApp;
beforeEach(async () => void (opened = await openApp()));
afterEach(() => opened.close());

const keyOf = (role: Role, name = `phone-${role}`): string => {
  const joined = opened.devices.join(opened.devices.invite(role).secret, name);
  if (!joined.ok) throw new Error(joined.code);
  return joined.key;
};
const get = (path: string, headers: Record<string, string>): Promise<Response> => askNetwork(opened, { method: 'GET', path }, headers);
const post = (path: string, headers: Record<string, string>, body: unknown): Promise<Response> =>
  askNetwork(opened, { method: 'POST', path }, headers, body);
const codeOf = async (response: Response): Promise<[number, string]> => [
  response.status,
  ((await response.json()) as { code: string }).code,
];
const note = (device?: string) => ({ events: [{ kind: 'note-written', body: { text: 'x' }, ...(device ? { device } : {}) }] });

describe('without the key of a device', () => {
  it('no route answers with data over the network', async () => {
    const patient = await openApp({ clock: hurriedClock() });
    expect(servedRoutes(patient).length).toBeGreaterThan(25);
    expect(await openRoutes(patient)).toEqual([]);
    await patient.close();
  });

  it('an address that is not there tells nothing either, and nothing can be changed', async () => {
    expect(await codeOf(await get('/api/nothing', fromNetwork()))).toEqual([401, 'no-device-key']);
    expect(await codeOf(await get('/photos/x', fromNetwork()))).toEqual([401, 'no-device-key']);
    expect(await codeOf(await post('/anything', fromNetwork(), {}))).toEqual([401, 'no-device-key']);
    expect(opened.bench.state().seq).toBe(0);
  });
});

describe('joining', () => {
  const invite = async (role: Role): Promise<{ expires_at: string; links: { url: string; qr_svg: string }[] }> =>
    (await (await opened.ask('/api/devices/invites', { role })).json()) as never;
  const joinWith = (secret: string, name: string): Promise<Response> => post('/api/join', fromNetwork(), { secret, name });

  it('goes by the link that the bench shows as a picture, once, and gives a cookie that no page can read', async () => {
    const { links } = await invite('bench');
    const { hash, origin, pathname } = new URL(links[0]!.url);
    expect([origin, pathname]).toEqual(['https://192.0.2.7:4781', '/join']);
    expect(links[0]!.qr_svg).toMatch(/^<svg /);
    const response = await joinWith(hash.slice(1), 'phone-1');
    expect(await response.json()).toEqual({ name: 'phone-1', role: 'bench', door: 'network' });
    const cookie = response.headers.get('set-cookie')!;
    for (const attribute of ['Secure', 'HttpOnly', 'SameSite=Strict', 'Path=/', 'Max-Age=34560000']) expect(cookie).toContain(attribute);
    const key = new RegExp(`^${KEY_COOKIE}=([^;]+)`).exec(cookie)![1]!;
    expect((await get('/api/bench', fromNetwork(key))).status).toBe(200);
    expect(await codeOf(await joinWith(hash.slice(1), 'phone-2'))).toEqual([409, 'invite-unknown']);
  });

  it('is slowed down for who guesses', async () => {
    const statuses: number[] = [];
    for (let i = 0; i < 12; i++) statuses.push((await joinWith(`guess ${i}`, 'phone')).status);
    expect(statuses).toEqual([...Array<number>(10).fill(409), 429, 429]);
  });
});

describe('a device that has joined', () => {
  it('may do what its role says, and no more', async () => {
    const [owner, bench, view] = [keyOf('owner'), keyOf('bench'), keyOf('view')].map((key) => fromNetwork(key));
    const status = async (headers: Record<string, string>, path: string, body?: unknown): Promise<number> =>
      (await (body ? post(path, headers, body) : get(path, headers))).status;
    expect(await Promise.all([owner!, bench!, view!].map((who) => status(who, '/api/bench')))).toEqual([200, 200, 200]);
    expect(await Promise.all([owner!, bench!, view!].map((who) => status(who, '/api/events', note())))).toEqual([200, 200, 403]);
    for (const path of ['/api/devices', '/api/backups', '/api/bundle'])
      expect(await Promise.all([owner!, bench!, view!].map((who) => status(who, path)))).toEqual([200, 403, 403]);
    expect(await status(bench!, '/api/devices/invites', { role: 'owner' })).toBe(403);
    expect(await codeOf(await post('/api/backups', view!, {}))).toEqual([403, 'role-too-small']);
  });

  it('notes under its own name, and under no other', async () => {
    const who = fromNetwork(keyOf('bench', 'left-phone'));
    expect((await post('/api/events', who, note())).status).toBe(200);
    expect((await post('/api/events', who, note('left-phone'))).status).toBe(200);
    expect(await codeOf(await post('/api/events', who, note('right-phone')))).toEqual([403, 'other-device']);
    expect(opened.bench.log(0, 9).map(({ event }) => event.device)).toEqual(['left-phone', 'left-phone']);
  });

  it('is let in no more once it is revoked by its name', async () => {
    const who = fromNetwork(keyOf('bench', 'lost-phone'));
    expect(await (await get('/api/me', who)).json()).toEqual({ name: 'lost-phone', role: 'bench', door: 'network' });
    expect((await opened.ask('/api/devices/revoke', { name: 'lost-phone' })).status).toBe(200);
    expect(await codeOf(await get('/api/bench', who))).toEqual([401, 'no-device-key']);
    expect((await opened.ask('/api/devices/revoke', { name: 'lost-phone' })).status).toBe(404);
  });

  it('must come by a name of this machine, and from a page of this bench for what changes something', async () => {
    const key = keyOf('owner');
    expect(await codeOf(await get('/api/bench', fromNetwork(key, { host: 'attacker.example' })))).toEqual([403, 'foreign-host']);
    for (const origin of ['https://attacker.example', 'http://192.0.2.7:4781', 'https://192.0.2.7', 'null'])
      expect(await codeOf(await post('/api/events', fromNetwork(key, { origin }), note()))).toEqual([403, 'foreign-origin']);
    const { origin: _none, ...bare } = fromNetwork(key);
    expect(await codeOf(await post('/api/events', bare, note()))).toEqual([403, 'foreign-origin']);
    expect(opened.bench.state().seq).toBe(0);
  });

  it('sends no more than the address takes, and not too fast', async () => {
    const who = fromNetwork(keyOf('bench'));
    expect(await codeOf(await post('/api/scout', { ...who, 'content-length': String(17 * 2 ** 20) }, {}))).toEqual([413, 'body-too-large']);
    const statuses = new Set<number>();
    for (let i = 0; i < 700; i++) statuses.add((await get('/api/me', who)).status);
    expect([...statuses]).toEqual([200, 429]);
  });
});

describe('the headers of every answer', () => {
  it('let only what this server sends run, be framed by nobody, and reach nothing else', async () => {
    for (const response of [
      await get('/api/bench', fromNetwork(keyOf('view'))),
      await get('/', fromNetwork()),
      await opened.ask('/api/bench'),
    ]) {
      const policy = response.headers.get('content-security-policy')!;
      for (const rule of ["default-src 'self'", "script-src 'self'", "connect-src 'self'", "object-src 'none'", "frame-ancestors 'none'"])
        expect(policy).toContain(rule);
      expect(policy).not.toMatch(/unsafe|https?:/);
      expect(response.headers.get('x-content-type-options')).toBe('nosniff');
      expect(response.headers.get('permissions-policy')).toContain('camera=(self)');
      expect(response.headers.get('referrer-policy')).toBe('same-origin');
    }
  });
});

describe('the measures', () => {
  it('are text of OpenMetrics, each line a comment or a name with a number, and hold nothing of the bench', async () => {
    opened.bench.record([{ kind: 'note-written', body: { text: 'a secret of mine' } }]);
    await opened.ask('/api/bench');
    const response = await opened.ask('/metrics');
    expect(response.headers.get('content-type')).toMatch(/^application\/openmetrics-text; version=1\.0\.0/);
    const text = await response.text();
    const lines = text.split('\n');
    expect(lines.slice(-2)).toEqual(['# EOF', '']);
    for (const line of lines.slice(0, -2))
      expect(line).toMatch(/^(?:# (?:TYPE|UNIT|HELP) salvor_\w+ .+|salvor_\w+(?:\{[^}]+\})? \d+(?:\.\d+)?(?:e-\d+)?)$/);
    expect(text).toContain('salvor_log_events 1\n');
    expect(text).not.toContain('secret');
  });
});
