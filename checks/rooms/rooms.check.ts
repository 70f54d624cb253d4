import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { importsBelow, importsOf, objection } from './import-table.ts';

const ROOT = join(import.meta.dirname, '../..');

describe('the table of rooms', () => {
  it('is kept by every import of the sources', () => {
    const imports = importsBelow(join(ROOT, 'src'));
    expect(imports.length).toBeGreaterThan(100);
    expect(imports.map(objection).filter((sentence) => sentence !== undefined)).toEqual([]);
  });

  it.each([
    ['core/diagnosis/a.ts', `import { x } from '../planning/b.ts';`],
    ['core/quantity/a.ts', `import type { x } from '../numeric/b.ts';`],
    ['core/circuit/a.ts', `import fs from 'node:fs';`],
    ['bench/a.ts', `export * from '../edges/store/b.ts';`],
    ['bench/a.ts', `import { Hono } from 'hono';`],
    ['edges/store/a.ts', `import { x } from '../photos/b.ts';`],
    ['edges/store/a.ts', `import { openBench } from '../../bench/open-bench.ts';`],
    ['apps/server/routes/a.ts', `const x = await import('../../../edges/store/b.ts');`],
    ['apps/web/a.tsx', `import {\n  x,\n} from '../server/b.ts';`],
    ['stray/a.ts', `import '../core/quantity/index.ts';`],
  ])('refuses in %s: %s', (file, text) => {
    const found = importsOf(file, text);
    expect(found).toHaveLength(1);
    expect(objection(found[0]!)).toMatch(/src\/.+:\d+ /);
  });

  it.each([
    ['core/diagnosis/a.ts', `import { x } from '../numeric/index.ts';`],
    ['bench/fold/a.ts', `import { z } from 'zod';`],
    ['edges/store/a.ts', `import type { EventStore } from '../../bench/ports.ts';`],
    ['apps/server/main.ts', `import { x } from '../../edges/store/b.ts';`],
    ['apps/web/pages/a.tsx', `import { x } from '../../../bench/views/index.ts';`],
  ])('allows in %s: %s', (file, text) => {
    expect(importsOf(file, text).map(objection)).toEqual([undefined]);
  });
});

describe('the purity of core and bench', () => {
  it.each(['core', 'bench'])('%s compiles without the types of a browser or of Node', (room) => {
    const config = JSON.parse(readFileSync(join(ROOT, 'src', room, 'tsconfig.json'), 'utf8'));
    expect(config.compilerOptions).toMatchObject({ lib: ['ES2023'], types: [] });
  });

  it('is guarded by the linter against a hidden clock and hidden chance', () => {
    const lint = JSON.parse(readFileSync(join(ROOT, '.oxlintrc.json'), 'utf8'));
    const pure = lint.overrides.find((override: { files: string[] }) => override.files.includes('src/core/**'));
    const banned = pure.rules['no-restricted-properties']
      .slice(1)
      .map((rule: { object: string; property: string }) => `${rule.object}.${rule.property}`);
    expect(banned).toEqual(['Date.now', 'Math.random']);
  });
});
