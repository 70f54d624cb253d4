import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openCommandLine } from './command-line.ts';
import { commandsOf, isShown } from './console-examples.ts';
import { pageText, ROOT, withoutBlocks } from './pages.ts';

const MANUAL = pageText('docs/manual.md');

describe('each command of the manual, one after the other on one bench', () => {
  let line: Awaited<ReturnType<typeof openCommandLine>>;
  beforeAll(async () => void (line = await openCommandLine()));
  afterAll(() => line.close());

  it.each(commandsOf(MANUAL).map((command) => [`line ${command.line}: ${command.text.split('\n')[0]}`, command] as const))(
    '%s',
    async (_name, { text, shown, about, exitCode }) => {
      const ran = await line.run(text);
      expect(ran.exitCode, ran.output).toBe(exitCode);
      if (!isShown(shown, ran.output, about)) expect(ran.output).toBe(shown.join('\n'));
    },
  );

  it('goes all the way from the listing to the books', () => {
    const commands = commandsOf(MANUAL).map(({ text }) => text);
    const steps = ['scout', 'add lot', 'add receive', 'add trial', 'add finding', 'next', 'add declined', 'undo', 'add remedy', 'drawer'];
    const onward = ['add transplant', 'add proof', 'add grade', 'add listed', 'add sold', 'add scrapped', 'books', 'export'];
    expect(
      [...steps, ...onward].filter((step) => !commands.some((text) => text.includes(`salvor ${step} `) || text.endsWith(`salvor ${step}`))),
    ).toEqual([]);
    expect(commands.length).toBeGreaterThan(30);
  });
});

describe('what the manual shows', () => {
  it('is compared word by word, except where it says that something is left out', () => {
    expect(isShown(['a 12.50 b'], 'a 12.50 b', false)).toBe(true);
    expect(isShown(['a 12.50 b'], 'a 12.51 b', false)).toBe(false);
    expect(isShown(['a 12.50 b'], 'a  3.1 b', true)).toBe(true);
    expect(isShown(['a 12.50 b'], 'a 3.1 c', true)).toBe(false);
    expect(isShown(['id …', '…', 'end'], 'id 7\none\ntwo\nend', false)).toBe(true);
    expect(isShown(['id …', 'end'], 'id 7\none\nend', false)).toBe(false);
  });
});

describe('what the manual tells one to press or to look at', () => {
  const screens = readdirSync(join(ROOT, 'src/apps/web'), { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.tsx?$/.test(file) && !file.includes('.test.'))
    .map((file) => readFileSync(join(ROOT, 'src/apps/web', file), 'utf8'))
    .join('\n')
    .replaceAll(/\s+/g, ' ');
  const named = [...withoutBlocks(MANUAL).matchAll(/\*\*([^*]+)\*\*/g)].map((bold) => bold[1]!.replaceAll(/\s+/g, ' '));

  it('is on the screens under that name', () => {
    expect([...new Set(named)].filter((name) => !screens.includes(name))).toEqual([]);
    expect(named.length).toBeGreaterThan(40);
  });
});
