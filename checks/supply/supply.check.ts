import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { billOfMaterials, licencesText, lockedPackages } from '../../scripts/sbom.mjs';

const ROOT = join(import.meta.dirname, '../..');
const manifest = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
  readonly dependencies: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
  readonly allowScripts: Readonly<Record<string, boolean>>;
};
/** Licences that ask for no more than that their text goes along; LGPL for a library that is linked and can be replaced. */
const TAKEN =
  /^\(?(?:MIT|MIT-0|ISC|0BSD|Unlicense|Apache-2\.0|BSD-[23]-Clause|BlueOak-1\.0\.0|CC0-1\.0|CC-BY-4\.0|Python-2\.0|Zlib|MPL-2\.0|LGPL-3\.0-or-later|WTFPL|Bitstream-Vera)(?: (?:AND|OR) |\)|$)/;

describe('what Salvor is built of', () => {
  it('is named by exact versions', () => {
    for (const version of Object.values({ ...manifest.dependencies, ...manifest.devDependencies }))
      expect(version).toMatch(/^\d+\.\d+\.\d+/);
  });

  it('runs no script of its own at install, but for the database', () => {
    expect(Object.entries(manifest.allowScripts)).toEqual([['better-sqlite3', true]]);
    const used = lockedPackages().filter(({ runsAtInstall, isForWork, isOptional }) => runsAtInstall && !isForWork && !isOptional);
    expect(used.map(({ name }) => name)).toEqual(['better-sqlite3']);
  });

  it('is under licences that let it be passed on', () => {
    const others = lockedPackages().filter(({ isForWork, licence }) => !isForWork && !TAKEN.test(licence ?? ''));
    expect(others.map(({ name, licence }) => `${name}: ${licence}`)).toEqual([]);
  });

  it('is listed as CycloneDX, each package once, with its hash and its address', () => {
    const { bomFormat, specVersion, components } = billOfMaterials();
    expect([bomFormat, specVersion]).toEqual(['CycloneDX', '1.6']);
    expect(new Set(components.map((each) => each['bom-ref'])).size).toBe(components.length);
    expect(components.length).toBeGreaterThan(100);
    for (const { purl, version, hashes } of components) {
      expect(purl).toMatch(/^pkg:npm\/(?:%40[\w.-]+\/)?[\w.-]+@\d/);
      expect(purl.endsWith(`@${version}`)).toBe(true);
      expect([purl, hashes.length]).toEqual([purl, 1]);
    }
    for (const name of Object.keys(manifest.dependencies))
      expect(components.some(({ purl, scope }) => purl.startsWith(`pkg:npm/${name.replace('@', '%40')}@`) && scope === 'required')).toBe(
        true,
      );
  });

  it('brings the texts of its licences', () => {
    const text = licencesText();
    for (const name of ['hono 4', 'react 19', 'better-sqlite3 12', 'selfsigned 5', 'qrcode 1']) expect(text).toContain(`${name}.`);
    expect(text).toContain('Permission is hereby granted, free of charge');
  });
});
