import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openApp, type OpenedApp } from '../interface/open-app.ts';
import { openCommandLine } from './command-line.ts';
import { anchorsOf, codeOf, linksOf, pages, pageText, ROOT } from './pages.ts';

const PAGES = pages();
const everywhere = <T>(find: (text: string, path: string) => readonly T[]): (readonly [string, T])[] =>
  PAGES.flatMap(({ path, text }) => find(text, path).map((found) => [path, found] as const));

describe('a link between pages', () => {
  const troubleWith = (from: string, link: string): string[] => {
    const [file = '', anchor] = link.split('#');
    const target = file === '' ? from : normalize(join(dirname(from), decodeURIComponent(file)));
    if (!existsSync(join(ROOT, target))) return [`${from} → ${link}: there is no ${target}`];
    if (anchor === undefined || anchorsOf(pageText(target)).has(anchor)) return [];
    return [`${from} → ${link}: ${target} has no such heading`];
  };
  const links = everywhere(linksOf).filter(([, link]) => !/^[a-z]+:/.test(link));

  it('leads to a file, and to a heading of it', () => {
    expect(links.flatMap(([from, link]) => troubleWith(from, link))).toEqual([]);
    expect(links.length).toBeGreaterThan(20);
  });

  it('is found wanting when there is no such file or heading', () => {
    expect(troubleWith('docs/manual.md', 'no-such-page.md')).toHaveLength(1);
    expect(troubleWith('docs/manual.md', 'formats.md#no-such-heading')).toHaveLength(1);
    expect(troubleWith('docs/manual.md', '#safety-first')).toEqual([]);
  });
});

describe('a command on a page', () => {
  let line: Awaited<ReturnType<typeof openCommandLine>>;
  beforeAll(async () => void (line = await openCommandLine()));
  afterAll(() => line.close());
  const help = async (...command: readonly string[]): Promise<string> =>
    (await line.run(['salvor', ...command, '--help'].join(' '))).output;
  const commandsIn = (text: string): string[] =>
    [...text.slice(text.indexOf('\nCommands:')).matchAll(/^ {2}([a-z][a-z-]*)(?= |$)/gm)]
      .map(([, name]) => name!)
      .filter((name) => name !== 'salvor');
  /** Each command by its words, with its help: `next`, `add`, `add lot` … */
  const allHelp = async (): Promise<ReadonlyMap<string, string>> => {
    const below = await Promise.all(GROUPS.map(async (group) => commandsIn(await help(group)).map((name) => `${group} ${name}`)));
    const names = [...commandsIn(await help()), ...below.flat()];
    return new Map(await Promise.all(names.map(async (name) => [name, await help(...name.split(' '))] as const)));
  };

  it('is one that there is, with options that it takes', async () => {
    const helps = await allHelp();
    const called = everywhere((text) =>
      codeOf(text).flatMap((code) => [...code.matchAll(/\bsalvor ([a-z][a-z-]*)(?: ([a-z][a-z-]*))?([^\n|;]*)/g)]),
    );
    const wrong = called.flatMap(([path, [whole, name = '', sub = '', rest = '']]) => {
      const known = helps.get(GROUPS.includes(name) && sub !== '' ? `${name} ${sub}` : name);
      if (known === undefined) return [`${path}: ${whole}`];
      const options = rest.replaceAll(/"[^"]*"/g, '').match(/--[a-z-]+/g) ?? [];
      return options
        .filter((option) => !new RegExp(`${option}\\b`).test(`${known} --home --json --help`))
        .map((option) => `${path}: ${whole} (${option})`);
    });
    expect(wrong).toEqual([]);
    expect([helps.size > 35, called.length > 40]).toEqual([true, true]);
  });

  it('has an example in its own help, all of whose names there are', async () => {
    const examples = [...(await allHelp()).values()].flatMap((text) => /(?<=^Example: )salvor .*/m.exec(text)?.[0] ?? []);
    const ready = examples
      .filter((example) => !NEEDS_MORE.test(example))
      .sort((a, b) => Number(a.includes('undo')) - Number(b.includes('undo')));
    for (const text of SET_UP) expect(await line.run(text)).toMatchObject({ exitCode: 0 });
    const troubles: string[] = [];
    for (const text of ready) {
      const { exitCode, output } = await line.run(`${text} --json`);
      if (exitCode > 1 || /"code": "unknown-/.test(output)) troubles.push(`${text}: ${output}`);
    }
    expect(troubles).toEqual([]);
    expect([examples.length > 30, ready.length > 20]).toEqual([true, true]);
  });
});

/** Commands that have commands of their own. */
const GROUPS: readonly string[] = ['add', 'model', 'reckon'];
/** Files, photos, ids and folders that are not at hand here. */
const NEEDS_MORE = /…|reed-r1|teach-unit|board-front|differences|postgres:|\.csv|\.jpg|\.zip|\.kicad_mod|add event|--home/;

/** What the examples speak of: units up to #7, a model of one’s own, and a bag of parts. */
const SET_UP = [
  'salvor add lot --title "Seven dead players" --seller "Harbour Clearance" --price 70 ' +
    '--items "A:tern-tn10; B:tern-tn10; C:tern-tn10; D:tern-tn10; E:tern-tn10; F:tern-tn10; G:tern-tn10"',
  'salvor model new "Reed R1"',
  'salvor add part cleaning --count 10 --price 1.50',
];

describe('a script of the checkout on a page', () => {
  const { scripts } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as { scripts: Record<string, string> };
  const codes = everywhere(codeOf);

  it('is in package.json', () => {
    const named = codes.flatMap(([path, code]) =>
      [...code.matchAll(/\bnpm (?:run ([a-z:-]+)|(start|test)\b)/g)].map((run) => [path, run[1] ?? run[2]!] as const),
    );
    expect(named.filter(([, name]) => !Object.hasOwn(scripts, name))).toEqual([]);
    expect(named.length).toBeGreaterThan(5);
  });

  it('takes the options that are shown', () => {
    const usage = readFileSync(join(ROOT, 'src/apps/server/arguments.ts'), 'utf8');
    const options = codes.flatMap(([path, code]) =>
      [...code.matchAll(/\bnpm start -- ([^\n`]*)/g)].flatMap((run) =>
        (run[1]!.match(/--[a-z]+/g) ?? []).map((option) => [path, option] as const),
      ),
    );
    expect(options.filter(([, option]) => !usage.includes(`${option} `))).toEqual([]);
    expect(options.length).toBeGreaterThan(1);
  });

  it('and a file that is named with its folder, is there', () => {
    const files = codes.flatMap(([path, code]) =>
      (code.match(/(?<![\w/.])(?:src|scripts|docs|checks|models|demo|bin)\/[a-z0-9_./-]*\.[a-z]+\b/g) ?? []).map(
        (file) => [path, file] as const,
      ),
    );
    expect(files.filter(([, file]) => !existsSync(join(ROOT, file)))).toEqual([]);
    expect(files.length).toBeGreaterThan(1);
  });
});

describe('an address on a page', () => {
  let opened: OpenedApp;
  beforeAll(async () => void (opened = await openApp()));
  afterAll(() => opened.close());

  it('is one that the server answers', async () => {
    const { paths } = (await (await opened.ask('/openapi.json')).json()) as { paths: Record<string, unknown> };
    const known = ['/openapi.json', ...Object.keys(paths)].map(
      (path) => new RegExp(`^${path.replaceAll('.', '\\.').replaceAll(/\{\w+\}/g, '[^/]+')}$`),
    );
    const named = everywhere((text) =>
      codeOf(text).flatMap((code) => code.match(/(?<![\w.}-])\/(?:api|photos|health|openapi)\b[^\s?`'")]*/g) ?? []),
    );
    const wrong = named.filter(([, address]) => address !== '/api/…' && !known.some((path) => path.test(address)));
    expect(wrong).toEqual([]);
    expect(named.length).toBeGreaterThan(10);
  });
});
