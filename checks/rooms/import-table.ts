import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize, relative } from 'node:path';

/** One import of one file: a relative one resolved to a path from `src/`, or the name of a package. */
export interface Import {
  readonly from: string;
  readonly line: number;
  readonly to: string;
  readonly isPackage: boolean;
}

/** The table of brief §5: which rooms a room may import (types too), and which packages. */
interface Rule {
  readonly room: RegExp;
  readonly name: string;
  readonly mayImport: readonly RegExp[];
  readonly packages: 'none' | 'any' | readonly string[];
}

const QUANTITY_NUMERIC = /^core\/(quantity|numeric)\//;
const ENGINE = /^core\/([a-z]+)\//;

/** First match wins. Inside a room everything may import everything of the same room. */
const RULES: readonly Rule[] = [
  { room: /^core\/quantity\//, name: 'core/quantity', mayImport: [], packages: 'none' },
  { room: /^core\/numeric\//, name: 'core/numeric', mayImport: [], packages: 'none' },
  { room: ENGINE, name: 'an engine of core', mayImport: [QUANTITY_NUMERIC], packages: 'none' },
  { room: /^bench\//, name: 'bench', mayImport: [/^core\//], packages: ['zod'] },
  {
    room: /^edges\/([a-z-]+)/,
    name: 'an edge',
    mayImport: [/^core\//, /^bench\/(ports|events|views|models|boards|state)/, /^edges\/files\//],
    packages: 'any',
  },
  {
    room: /^apps\/(server|cli)\/(?:.*\/)?main\.ts$/,
    name: 'main.ts of an app',
    mayImport: [/^core\//, /^bench\//, /^edges\//],
    packages: 'any',
  },
  { room: /^apps\/(server|cli)\//, name: 'server or cli (outside main.ts)', mayImport: [/^core\//, /^bench\//], packages: 'any' },
  { room: /^apps\/web\//, name: 'web', mayImport: [/^core\//, /^bench\//], packages: 'any' },
];

const homeOf = (file: string): string => {
  const parts = file.split('/');
  return parts[0] === 'bench' ? 'bench/' : `${parts[0]}/${parts[1]}/`;
};

/** A sentence for an import that the table forbids, saying how to mend it; undefined for one that it allows. */
export function objection(found: Import): string | undefined {
  const rule = RULES.find((candidate) => candidate.room.test(found.from));
  const where = `src/${found.from}:${found.line}`;
  if (!rule) return `${where} lies in no room of the table: move it into core, bench, edges or apps.`;
  if (found.isPackage) return packageObjection(rule, found, where);
  if (found.to.startsWith(homeOf(found.from)) || rule.mayImport.some((allowed) => allowed.test(found.to))) return undefined;
  return (
    `${where} imports ${found.to}, but ${rule.name} may not: arrows only point downward. ` +
    'Pass the value or a function in as a parameter, declare a port in src/bench/ports.ts and wire it in main.ts, or move what both need one room down.'
  );
}

function packageObjection(rule: Rule, found: Import, where: string): string | undefined {
  if (rule.packages === 'any' || (rule.packages !== 'none' && rule.packages.includes(found.to))) return undefined;
  return `${where} imports the package "${found.to}", but ${rule.name} is pure: take the result as a parameter, or use the package in an edge behind a port.`;
}

/** Every import, export-from and dynamic import below a folder of sources; tests and fixtures for tests are left out. */
export function importsBelow(src: string): Import[] {
  const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).map((file) => file.replaceAll('\\', '/'));
  return files
    .filter((file) => /\.tsx?$/.test(file) && !/\.(test|contract)\.tsx?$|\/testing\//.test(file) && !file.endsWith('vite.config.ts'))
    .flatMap((file) => importsOf(file, readFileSync(join(src, file), 'utf8')));
}

const SPECIFIER = /(?:^\s*(?:import|export)\b[^'"`;]*?\bfrom\s*|^\s*import\s*|\bimport\s*\(\s*)(['"])([^'"]+)\1/gm;

/** The imports in the text of one file, `file` given from `src/`. */
export function importsOf(file: string, text: string): Import[] {
  return [...text.matchAll(SPECIFIER)].map((match) => {
    const target = match[2]!;
    const isPackage = !target.startsWith('.');
    const line = text.slice(0, match.index + match[0].length).split('\n').length;
    const to = isPackage ? packageName(target) : relative('.', normalize(join(dirname(file), target))).replaceAll('\\', '/');
    return { from: file, line, to, isPackage };
  });
}

const packageName = (target: string): string =>
  target
    .split('/')
    .slice(0, target.startsWith('@') ? 2 : 1)
    .join('/');
