import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import { makeBackup, tryBackup, type Tried } from '../../../bench/backup/index.ts';
import type { Backup } from '../../../bench/ports.ts';
import { Problem } from '../../../bench/views/index.ts';
import { problemOfBackup } from '../../../bench/words.ts';
import type { AppParts } from '../app-parts.ts';
import { Refused } from '../refused.ts';
import { answers, backupRefusal, jsonBody, refusals } from '../responses.ts';

const BackupEntry = z
  .object({
    name: z.string(),
    made_at: z.string(),
    events: z.number().int(),
    bytes: z.number().int().meta({ description: 'Of its file; photos lie beside it, once for all backups' }),
  })
  .meta({ id: 'Backup' });

const TriedBackup = z
  .object({
    name: z.string(),
    events: z.number().int(),
    photos: z.number().int().meta({ description: 'Each was there and had its hash' }),
    digest: z.string().meta({ description: 'SHA-256 of the state that its log gives' }),
  })
  .meta({ id: 'TriedBackup' });

const Plan = {
  folder: z.string().max(1000).nullable().meta({ description: 'Whole path of a folder outside the bench; null for one inside it' }),
  nightly: z.boolean(),
};
const BackupPlan = z.object(Plan).meta({ id: 'BackupPlan' });

const Backups = z
  .object({
    ...Plan,
    used_folder: z.string(),
    backups: z.array(BackupEntry).meta({ description: 'Newest first' }),
    trouble: Problem.nullable().meta({ description: 'Why the folder cannot be used now' }),
  })
  .meta({ id: 'Backups' });

const listRoute = createRoute({
  method: 'get',
  path: '/api/backups',
  summary: 'Where backups go, and those that are there',
  responses: { ...answers(Backups, 'The backups'), ...refusals() },
});

const makeRoute = createRoute({
  method: 'post',
  path: '/api/backups',
  summary: 'Makes a backup now, proves that it opens to the same bench, and lets go of what rotation no longer keeps',
  responses: {
    ...answers(z.object({ backup: BackupEntry, tried: TriedBackup, removed: z.array(z.string()) }).meta({ id: 'MadeBackup' }), 'Made'),
    ...refusals(),
    ...backupRefusal,
  },
});

const planRoute = createRoute({
  method: 'post',
  path: '/api/backups/plan',
  summary: 'Chooses the folder of the backups, and whether one is made each night',
  request: { body: jsonBody(BackupPlan) },
  responses: { ...answers(BackupPlan, 'Chosen'), ...refusals('bad-input', 'bad-json', 'unsupported-media-type'), ...backupRefusal },
});

const tryRoute = createRoute({
  method: 'post',
  path: '/api/backups/try',
  summary: 'The restore drill on a backup that is there: opens it, checks every photo, and folds its log',
  request: { body: jsonBody(z.object({ name: z.string().max(200) }).meta({ id: 'BackupName' })) },
  responses: { ...answers(TriedBackup, 'It holds'), ...refusals('bad-input', 'bad-json', 'unsupported-media-type'), ...backupRefusal },
});

const entryOf = ({ name, madeAt, events, bytes }: Backup) => ({ name, made_at: madeAt, events, bytes });
const triedOf = ({ name, events, photos, digest }: Tried) => ({ name, events, photos, digest });
const refused = (trouble: Parameters<typeof problemOfBackup>[0]): Refused => new Refused(409, problemOfBackup(trouble));

/** Backups on the machine that holds the bench. */
export const backupRoutes = (parts: AppParts) => {
  const shelf = parts.backups;
  return new OpenAPIHono()
    .openapi(listRoute, async (c) => {
      const listed = await shelf.list();
      const { folder, nightly } = shelf.plan();
      const found = listed.ok ? { backups: listed.backups.map(entryOf), trouble: null } : { backups: [], trouble: problemOfBackup(listed) };
      return c.json({ folder, nightly, used_folder: shelf.folder(), ...found }, 200);
    })
    .openapi(makeRoute, async (c) => {
      const made = await makeBackup({ ...parts, shelf });
      if (!made.ok) throw refused(made);
      return c.json({ backup: entryOf(made.backup), tried: triedOf(made.tried), removed: [...made.removed] }, 200);
    })
    .openapi(planRoute, async (c) => {
      const plan = c.req.valid('json');
      const set = await shelf.setPlan(plan);
      if (!set.ok) throw refused(set);
      return c.json(plan, 200);
    })
    .openapi(tryRoute, async (c) => {
      const { name } = c.req.valid('json');
      const listed = await shelf.list();
      if (!listed.ok) throw refused(listed);
      if (!listed.backups.some((backup) => backup.name === name))
        throw refused({ code: 'no-such-backup', where: name, detail: 'it is not in the folder' });
      const tried = await tryBackup(shelf, parts.bench, name);
      if (!tried.ok) throw refused(tried);
      return c.json(triedOf(tried), 200);
    });
};
