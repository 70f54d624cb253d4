import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import QRCode from 'qrcode';
import { ROLES, type JoinedDevice } from '../../../bench/ports.ts';
import { JOIN_PATH, KEY_COOKIE } from '../admission.ts';
import type { AppParts } from '../app-parts.ts';
import { refuse } from '../refused.ts';
import { answers, jsonBody, refusals } from '../responses.ts';
import { visitorOf } from '../visitor.ts';

/** Browsers keep no cookie longer than 400 days (RFC 6265bis); it is given anew with each visit. */
const COOKIE_S = 400 * 86_400;

const RoleName = z.enum(ROLES).meta({ description: 'owner: everything; bench: all the work; view: only look' });

const Me = z
  .object({
    name: z.string().nullable().meta({ description: 'Of a device that joined; null on the machine of the bench' }),
    role: RoleName,
    door: z.enum(['here', 'network']),
  })
  .meta({ id: 'Me' });

const Device = z
  .object({ id: z.string(), name: z.string(), role: RoleName, joined_at: z.string(), last_seen_at: z.string().nullable() })
  .meta({ id: 'Device' });

const Devices = z
  .object({
    devices: z.array(Device),
    network: z
      .object({ urls: z.array(z.string()), fingerprint: z.string().meta({ description: 'SHA-256 of the certificate' }) })
      .nullable()
      .meta({ description: 'null while the bench answers to this machine alone' }),
  })
  .meta({ id: 'Devices' });

const Invite = z
  .object({
    expires_at: z.string(),
    links: z.array(z.object({ url: z.string(), qr_svg: z.string().meta({ description: 'The link as a picture to scan' }) })),
  })
  .meta({ id: 'Invite' });

const DeviceName = z.string().regex(/^[A-Za-z0-9][A-Za-z0-9_.-]{0,63}$/, 'must be letters, digits, dots, dashes and underscores');

const meRoute = createRoute({
  method: 'get',
  path: '/api/me',
  summary: 'Who asks, and what they may do',
  responses: { ...answers(Me, 'The device that asks'), ...refusals() },
});

const listRoute = createRoute({
  method: 'get',
  path: '/api/devices',
  summary: 'Devices that have joined, and how others reach the bench',
  responses: { ...answers(Devices, 'The devices'), ...refusals() },
});

const inviteRoute = createRoute({
  method: 'post',
  path: '/api/devices/invites',
  summary: 'A link, and its picture, with which one device joins, once, within ten minutes',
  request: { body: jsonBody(z.object({ role: RoleName }).meta({ id: 'InviteRole' })) },
  responses: { ...answers(Invite, 'The invitation'), ...refusals('bad-input', 'bad-json', 'unsupported-media-type', 'no-network') },
});

const revokeRoute = createRoute({
  method: 'post',
  path: '/api/devices/revoke',
  summary: 'Takes the key of a device away, by its name',
  request: { body: jsonBody(z.object({ name: DeviceName }).meta({ id: 'DeviceName' })) },
  responses: {
    ...answers(z.object({ devices: z.array(Device) }), 'The devices that are left'),
    ...refusals('bad-input', 'bad-json', 'unsupported-media-type', 'no-such-device'),
  },
});

const joinRoute = createRoute({
  method: 'post',
  path: JOIN_PATH,
  summary: 'Joins with the secret of an invitation; the answer sets the key of the device as a cookie',
  request: { body: jsonBody(z.object({ secret: z.string().max(200), name: DeviceName }).meta({ id: 'JoinRequest' })) },
  responses: {
    ...answers(Me, 'Joined'),
    ...refusals('bad-input', 'bad-json', 'unsupported-media-type', 'invite-unknown', 'device-name-taken'),
  },
});

const shown = ({ id, name, role, joinedAt, lastSeenAt }: JoinedDevice) => ({
  id,
  name,
  role,
  joined_at: joinedAt,
  last_seen_at: lastSeenAt,
});

const giveKey = (c: Context, key: string): void =>
  setCookie(c, KEY_COOKIE, key, { path: '/', secure: true, httpOnly: true, sameSite: 'Strict', maxAge: COOKIE_S });

/** Who may reach the bench. */
export const deviceRoutes = ({ devices, network }: AppParts) =>
  new OpenAPIHono()
    .openapi(meRoute, (c) => {
      const { name, role, door } = visitorOf(c);
      const key = getCookie(c, KEY_COOKIE);
      if (door === 'network' && key !== undefined) giveKey(c, key);
      return c.json({ name, role, door }, 200);
    })
    .openapi(listRoute, (c) => {
      const open = network();
      return c.json({ devices: devices.list().map(shown), network: open && { urls: [...open.urls], fingerprint: open.fingerprint } }, 200);
    })
    .openapi(inviteRoute, async (c) => {
      const open = network();
      if (!open) throw refuse('no-network');
      const { secret, expiresAt } = devices.invite(c.req.valid('json').role);
      const links = open.urls.map(async (base) => {
        // Behind the #, so that no server and no log ever sees it.
        const url = `${base}join#${secret}`;
        return { url, qr_svg: await QRCode.toString(url, { type: 'svg', margin: 2 }) };
      });
      return c.json({ expires_at: expiresAt, links: await Promise.all(links) }, 200);
    })
    .openapi(revokeRoute, (c) => {
      const { name } = c.req.valid('json');
      if (!devices.revoke(name)) throw refuse('no-such-device', { where: 'name', detail: name });
      return c.json({ devices: devices.list().map(shown) }, 200);
    })
    .openapi(joinRoute, (c) => {
      const { secret, name } = c.req.valid('json');
      const joined = devices.join(secret, name);
      if (!joined.ok) throw refuse(joined.code, { where: joined.code === 'invite-unknown' ? 'secret' : 'name', detail: joined.detail });
      giveKey(c, joined.key);
      return c.json({ name: joined.device.name, role: joined.device.role, door: 'network' as const }, 200);
    });
