import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from './run.mjs';

/** The list of what is built in, from the lock file and the installed packages. */

const readJson = (path) => JSON.parse(readFileSync(path, 'utf8'));

/** Every package of the lock file: its place in `node_modules`, name, version, licence, hash, whether it only serves the work on Salvor, and whether it runs a script when installed. */
export function lockedPackages() {
  const { packages } = readJson(join(ROOT, 'package-lock.json'));
  return Object.entries(packages)
    .filter(([path]) => path !== '')
    .map(([path, entry]) => ({
      path,
      name: entry.name ?? path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length),
      version: entry.version,
      licence: READ_IN_THEIR_FILE[path.replace(/^node_modules\//, '')] ?? licenceOf(path, entry),
      integrity: entry.integrity ?? null,
      isForWork: entry.dev === true || entry.devOptional === true,
      isOptional: entry.optional === true,
      runsAtInstall: entry.hasInstallScript === true,
    }));
}

/** Packages that say it only in a file of theirs, where it was read. */
const READ_IN_THEIR_FILE = { 'png-js': 'MIT', 'dejavu-fonts-ttf': 'Bitstream-Vera' };

/** SPDX expression; from the package itself where the lock file does not say it. */
function licenceOf(path, entry) {
  const own = join(ROOT, path, 'package.json');
  const said = entry.license ?? (existsSync(own) ? readJson(own).license : undefined);
  return typeof said === 'string' ? said : (said?.type ?? null);
}

const hashesOf = (integrity) => {
  const match = /^sha512-(.+)$/.exec(integrity ?? '');
  return match ? [{ alg: 'SHA-512', content: Buffer.from(match[1], 'base64').toString('hex') }] : [];
};

/** The package URL (purl-spec, type npm): the @ of a scope is escaped. */
const purlOf = ({ name, version }) => `pkg:npm/${name.replace(/^@/, '%40')}@${version}`;

/** A bill of materials as CycloneDX 1.6 (ECMA-424), the same bytes for the same lock file. */
export function billOfMaterials() {
  const { name, version, description } = readJson(join(ROOT, 'package.json'));
  const seen = new Map(lockedPackages().map((each) => [purlOf(each), each]));
  const components = [...seen]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([purl, each]) => ({
      type: 'library',
      'bom-ref': purl,
      name: each.name,
      version: each.version,
      scope: each.isForWork ? 'excluded' : each.isOptional ? 'optional' : 'required',
      ...(each.licence ? { licenses: [{ expression: each.licence }] } : {}),
      hashes: hashesOf(each.integrity),
      purl,
    }));
  const component = { type: 'application', 'bom-ref': name, name, version, description };
  return { bomFormat: 'CycloneDX', specVersion: '1.6', version: 1, metadata: { component }, components };
}

/** Licences of the packages that Salvor runs with, each with its own text where it brings one. */
export function licencesText() {
  const used = lockedPackages().filter(({ isForWork, path }) => !isForWork && existsSync(join(ROOT, path)));
  return used
    .map((each) => `${each.name} ${each.version}: ${each.licence ?? 'see below'}\n\n${licenceTextOf(each.path)}`)
    .join(`\n${'-'.repeat(72)}\n\n`);
}

function licenceTextOf(path) {
  const file = readdirSync(join(ROOT, path)).find((name) => /^(?:licen[cs]e|copying)(?:\.|-|$)/i.test(name));
  return file ? `${readFileSync(join(ROOT, path, file), 'utf8').trim()}\n` : '(brings no text of its own)\n';
}
