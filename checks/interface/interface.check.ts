import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ZodType } from 'zod';
import { BODY_LIMITS } from '../../src/apps/server/app.ts';
import { BATCH_LIMIT } from '../../src/apps/server/routes/events.ts';
import { Problem } from '../../src/bench/views/index.ts';
import { differences, examplesOf } from './examples.ts';
import { openApp, type OpenedApp } from './open-app.ts';
import { openapiProblems, type OpenApiDocument } from './openapi-laws.ts';

const PAGE = readFileSync(join(import.meta.dirname, '../../docs/interface.md'), 'utf8');

/** The bench after all examples of the page; the checks below ask it further. */
let opened: OpenedApp;
beforeAll(async () => void (opened = await openApp()));
afterAll(() => opened.close());

describe('each example of docs/interface.md', () => {
  it.each(examplesOf(PAGE).map((example) => [`line ${example.line}: ${example.method} ${example.path}`, example] as const))(
    '%s',
    async (_name, example) => {
      expect(['GET', 'POST']).toContain(example.method);
      const response = await opened.ask(example.path, example.body);
      const answer = (await response.json()) as unknown;
      expect(differences(example.answer, answer)).toEqual([]);
      expect(response.status).toBe(example.status);
    },
  );

  it('is there for every step of the way', () => {
    const bodies = JSON.stringify(examplesOf(PAGE).map(({ body }) => body ?? null));
    for (const kind of ['lot-bought', 'item-received', 'trial-done', 'sold']) expect(bodies).toContain(kind);
    expect(examplesOf(PAGE).map(({ status }) => status)).toEqual(expect.arrayContaining([200, 400, 409]));
  });
});

describe('the description of the interface', () => {
  const describedBy = async (): Promise<OpenApiDocument> => (await (await opened.ask('/openapi.json')).json()) as OpenApiDocument;

  it('is a sound OpenAPI 3.1 document, with an example of every refusal', async () => {
    expect(openapiProblems(await describedBy())).toEqual([]);
  });

  it('holds every route that is served, and no other', async () => {
    const { paths } = await describedBy();
    const described = Object.entries(paths).flatMap(([path, item]) => Object.keys(item).map((method) => `${method.toUpperCase()} ${path}`));
    const served = opened.app.routes
      .filter(({ method, path }) => method !== 'ALL' && path !== '/' && !path.includes('*'))
      .map(({ method, path }) => `${method} ${path.replaceAll(/:(\w+)/g, '{$1}')}`);
    expect(described.toSorted()).toEqual([...new Set(served)].toSorted());
    expect(described.length).toBeGreaterThan(15);
  });

  it('names a schema for every kind of event', async () => {
    const { components } = await describedBy();
    const names = Object.keys(components.schemas).filter((name) => name.startsWith('Event.'));
    expect(names).toEqual(expect.arrayContaining(['Event.lot-bought', 'Event.sold', 'Event.correction', 'Event.newer']));
  });
});

describe('each answer fits the schema that describes it', () => {
  const PLACEHOLDERS: Readonly<Record<string, () => string>> = { '{item}': () => '1', '{id}': () => 'tern-tn10' };

  const QUESTIONS: Readonly<Record<string, string>> = { '/api/books/tax': '?from=2026-01-01&to=2026-12-31' };

  it('for everything that can be read', async () => {
    const readable = opened.app.described.definitions.flatMap((definition) => {
      if (definition.type !== 'route' || definition.route.method !== 'get') return [];
      // A comparison has to be made first: comparisons.check.ts does.
      if (definition.route.path.includes('{key}')) return [];
      const content = (definition.route.responses[200] as { content?: Record<string, { schema?: unknown }> } | undefined)?.content;
      const schema = content?.['application/json']?.schema;
      return schema ? [{ path: definition.route.path, schema: schema as ZodType }] : [];
    });
    expect(readable.length).toBeGreaterThanOrEqual(11);
    for (const { path, schema } of readable) {
      const filled = path.replaceAll(/\{\w+\}/g, (name) => PLACEHOLDERS[name]!()) + (QUESTIONS[path] ?? '');
      const response = await opened.ask(filled);
      expect([filled, response.status]).toEqual([filled, 200]);
      const parsed = schema.safeParse(await response.json());
      expect([filled, parsed.success ? [] : parsed.error.issues]).toEqual([filled, []]);
    }
  });
});

describe('what is refused', () => {
  const refusal = async (response: Response): Promise<[number, string]> => {
    const problem = Problem.parse(await response.json());
    expect(problem.message).toMatch(/^\S.{20,}\.$/s);
    return [response.status, problem.code];
  };
  const asked = async (path: string, init: RequestInit): Promise<[number, string]> =>
    refusal(await opened.app.request(`http://127.0.0.1:4780${path}`, init));
  const json = { 'content-type': 'application/json' };

  it('an address that is not there, also below the pages of the web app', async () => {
    expect(await refusal(await opened.ask('/api/nothing'))).toEqual([404, 'no-such-address']);
    expect(await asked('/api/pile', { method: 'DELETE' })).toEqual([404, 'no-such-address']);
    expect(await refusal(await opened.ask('/api/items/no-such-unit'))).toEqual([404, 'no-such-item']);
    expect(await refusal(await opened.ask('/api/models/no-such-model'))).toEqual([404, 'no-such-model']);
    expect(await refusal(await opened.ask(`/photos/${'0'.repeat(64)}/view`))).toEqual([404, 'no-such-photo']);
  });

  it('a name of the server that is not this machine, and a change that a foreign page asks for', async () => {
    expect(await asked('/api/bench', { headers: { host: 'attacker.example' } })).toEqual([403, 'foreign-host']);
    const foreign = { ...json, origin: 'https://attacker.example' };
    const before = opened.bench.state().seq;
    const event = { kind: 'note-written', body: { text: 'from elsewhere' } };
    expect(await asked('/api/events', { method: 'POST', headers: foreign, body: JSON.stringify({ events: [event] }) })).toEqual([
      403,
      'foreign-origin',
    ]);
    expect(opened.bench.state().seq).toBe(before);
  });

  it('input that does not fit, with where', async () => {
    expect(await refusal(await opened.ask('/api/items?limit=201'))).toEqual([400, 'bad-input']);
    expect(await refusal(await opened.ask('/api/items?status=asleep'))).toEqual([400, 'bad-input']);
    expect(await refusal(await opened.ask('/api/events?after=-1'))).toEqual([400, 'bad-input']);
    expect(await refusal(await opened.ask('/photos/abc/view'))).toEqual([400, 'bad-input']);
    expect(await refusal(await opened.ask('/api/scout', { model_id: 'tern-tn10' }))).toEqual([400, 'bad-input']);
    const { where } = Problem.parse(await (await opened.ask('/api/scout', { model_id: 'tern-tn10' })).json());
    expect(where).toBe('body.price_minor');
  });

  it('a body that is not JSON, of another type, or of too many events', async () => {
    expect(await asked('/api/events', { method: 'POST', headers: json, body: '{"events":[' })).toEqual([400, 'bad-json']);
    expect(await asked('/api/events', { method: 'POST', headers: { 'content-type': 'text/plain' }, body: '{}' })).toEqual([
      415,
      'unsupported-media-type',
    ]);
    expect(await asked('/api/photos', { method: 'POST', headers: json, body: '{}' })).toEqual([415, 'unsupported-media-type']);
    expect(await refusal(await opened.ask('/api/events', { events: Array.from({ length: BATCH_LIMIT + 1 }, () => ({})) }))).toEqual([
      400,
      'bad-input',
    ]);
    expect(await refusal(await opened.ask('/api/events', { events: [] }))).toEqual([400, 'bad-input']);
  });

  it('a body that is too large, by its announced length or by what comes', async () => {
    const announced = { ...json, 'content-length': String(BODY_LIMITS.events + 1) };
    expect(await asked('/api/events', { method: 'POST', headers: announced, body: '{}' })).toEqual([413, 'body-too-large']);
    const chunk = new Uint8Array(2 ** 20).fill(32);
    let left = BODY_LIMITS.events / chunk.length + 1;
    const body = new ReadableStream<Uint8Array>({ pull: (controller) => (left-- > 0 ? controller.enqueue(chunk) : controller.close()) });
    expect(await asked('/api/events', { method: 'POST', headers: json, body, duplex: 'half' } as RequestInit)).toEqual([
      413,
      'body-too-large',
    ]);
  });

  it('with nothing unexpected on the way', () => {
    expect(opened.logged).toEqual([]);
  });
});

describe('photos', () => {
  const picture = (red: number): Promise<Buffer> =>
    sharp({ create: { width: 64, height: 48, channels: 3, background: { r: red, g: 90, b: 60 } } })
      .png()
      .toBuffer();
  const send = async (files: readonly (readonly [name: string, bytes: Uint8Array])[]): Promise<Response> => {
    const form = new FormData();
    for (const [name, bytes] of files) form.append('photos', new File([new Uint8Array(bytes)], name));
    return opened.ask('/api/photos', form);
  };

  it('are taken one by one: one that is refused does not lose the others', async () => {
    const response = await send([
      ['front.png', await picture(10)],
      ['notes.png', Buffer.from('this is text')],
      ['back.png', await picture(200)],
      ['front again.png', await picture(10)],
    ]);
    const { results } = (await response.json()) as { results: { name: string; ok: boolean; duplicate?: boolean; message?: string }[] };
    expect(response.status).toBe(200);
    expect(results.map(({ name, ok }) => [name, ok])).toEqual([
      ['front.png', true],
      ['notes.png', false],
      ['back.png', true],
      ['front again.png', true],
    ]);
    expect(results[1]!.message).toContain('notes.png');
  });

  it('come back at three sizes, never to change, and never to be taken for something else', async () => {
    const { results } = (await (await send([['one.png', await picture(77)]])).json()) as { results: [{ photo: { hash: string } }] };
    for (const size of ['view', 'thumb', 'original']) {
      const response = await opened.ask(`/photos/${results[0].photo.hash}/${size}`);
      expect(response.headers.get('content-type')).toMatch(/^image\/(png|jpeg|webp)$/);
      expect(response.headers.get('cache-control')).toContain('immutable');
      expect(response.headers.get('x-content-type-options')).toBe('nosniff');
      expect((await sharp(Buffer.from(await response.arrayBuffer())).metadata()).width).toBe(64);
    }
  });

  it('ask for a file when there is none', async () => {
    const form = new FormData();
    form.append('photos', 'no file');
    expect((await opened.ask('/api/photos', form)).status).toBe(400);
  });
});

describe('the bundle', () => {
  it('brings events and photos to an empty bench, and is refused by one that is not', async () => {
    const response = await opened.ask('/api/bundle');
    expect(response.headers.get('content-disposition')).toContain('salvor-bench.zip');
    const bytes = new Uint8Array(await response.arrayBuffer());
    const fresh = await openApp();
    try {
      const taken = await fresh.ask('/api/bundle', bytes);
      expect([taken.status, await taken.json()]).toEqual([
        200,
        { events: opened.bench.state().seq, photos: 3, digest: response.headers.get('x-salvor-digest') },
      ]);
      const again = await fresh.ask('/api/bundle', bytes);
      expect([again.status, Problem.parse(await again.json()).code]).toEqual([409, 'not-empty']);
    } finally {
      await fresh.close();
    }
  });

  it('is refused when it is none, and nothing is stored', async () => {
    const fresh = await openApp();
    try {
      const response = await fresh.ask('/api/bundle', new TextEncoder().encode('no bundle'));
      expect([response.status, Problem.parse(await response.json()).code]).toEqual([400, 'bad-bundle']);
      expect(fresh.bench.overview().events).toBe(0);
    } finally {
      await fresh.close();
    }
  });
});

describe('the stream of changes', () => {
  it('tells the place of the last event at once, and again after the log has grown', async () => {
    const response = await opened.ask('/api/changes');
    expect(response.headers.get('content-type')).toContain('text/event-stream');
    const reader = response.body!.getReader();
    const next = async (): Promise<string> => new TextDecoder().decode((await reader.read()).value);
    const before = opened.bench.state().seq;
    expect(await next()).toContain(`event: seq\ndata: ${before}\n`);
    await opened.ask('/api/events', { events: [{ kind: 'note-written', body: { text: 'for those who watch' } }] });
    expect(await next()).toContain(`data: ${before + 1}\n`);
    await reader.cancel();
  });
});

describe('the pages of the web app', () => {
  let web: OpenedApp;
  const dir = mkdtempSync(join(tmpdir(), 'salvor-web-'));
  beforeAll(async () => {
    mkdirSync(join(dir, 'assets'));
    writeFileSync(join(dir, 'index.html'), '<!doctype html><title>Salvor</title>');
    writeFileSync(join(dir, 'assets/main-1a2b3c.js'), `const text = '${'a'.repeat(5000)}';`);
    web = await openApp({ webDir: dir });
  });
  afterAll(async () => {
    await web.close();
    rmSync(dir, { recursive: true, force: true });
  });
  const headersOf = async (path: string): Promise<Headers> => (await web.ask(path)).headers;

  it('are one page under every address of its own, asked for anew each time', async () => {
    for (const path of ['/', '/pile', '/bench/unit-7']) {
      const response = await web.ask(path);
      expect([path, response.status, await response.text()]).toEqual([path, 200, expect.stringContaining('<title>Salvor')]);
      expect(response.headers.get('cache-control')).toBe('no-cache');
    }
  });

  it('have files that are kept for good, packed where the browser can unpack them', async () => {
    expect((await headersOf('/assets/main-1a2b3c.js')).get('cache-control')).toContain('immutable');
    const packed = await web.app.request('http://127.0.0.1:4780/assets/main-1a2b3c.js', { headers: { 'accept-encoding': 'gzip' } });
    expect(packed.headers.get('content-encoding')).toBe('gzip');
    expect((await packed.arrayBuffer()).byteLength).toBeLessThan(500);
  });

  it('never stand in for a file or an answer that is not there', async () => {
    for (const path of ['/assets/gone.js', '/api/gone', '/photos/gone', '/favicon.ico', '/../package.json', '/%2e%2e/package.json'])
      expect([path, (await web.ask(path)).headers.get('content-type')]).toEqual([path, expect.stringContaining('application/json')]);
  });

  it('let nothing run or load but what this server sends', async () => {
    const policy = (await headersOf('/')).get('content-security-policy')!;
    expect(policy).toContain("default-src 'self'");
    expect(policy).toContain("img-src 'self' blob: data:");
    expect(policy).not.toMatch(/unsafe|\*/);
    expect((await headersOf('/')).get('x-content-type-options')).toBe('nosniff');
  });

  it('say what to do where they are not built', async () => {
    const response = await opened.ask('/');
    expect([response.status, Problem.parse(await response.json()).message]).toEqual([503, expect.stringContaining('npm run build')]);
  });
});
