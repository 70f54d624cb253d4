import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';

export const ROOT = join(import.meta.dirname, '../..');

export interface Page {
  /** From the root of the checkout, such as `docs/manual.md`. */
  readonly path: string;
  readonly text: string;
}

/** README.md and every page below docs. */
export function pages(): Page[] {
  const below = readdirSync(join(ROOT, 'docs'), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.md'))
    .map((entry) => relative(ROOT, join(entry.parentPath, entry.name)).replaceAll('\\', '/'));
  return ['README.md', ...below.sort()].map((path) => ({ path, text: pageText(path) }));
}

export const pageText = (path: string): string => readFileSync(join(ROOT, path), 'utf8');

/** The page without its fenced blocks; their lines are left empty, so that line numbers stay. */
export const withoutBlocks = (text: string): string =>
  text.replaceAll(/^(?:```|~~~)[\s\S]*?^(?:```|~~~)$/gm, (block) => block.replaceAll(/[^\n]/g, ''));

/** What stands in code: fenced blocks, blocks that are indented, and spans. */
export function codeOf(text: string): string[] {
  const fenced = [...text.matchAll(/^```[^\n]*\n([\s\S]*?)^```$/gm)].map((block) => block[1]!);
  const prose = withoutBlocks(text);
  const indented = [...prose.matchAll(/(?:^ {4,}\S.*\n?)+/gm)].map((block) => block[0]);
  const spans = [...prose.replaceAll(/^ {4,}.*$/gm, '').matchAll(/`([^`\n]+)`/g)].map((span) => span[1]!);
  return [...fenced, ...indented, ...spans].map((code) => code.replaceAll(/\\\n\s*/g, ''));
}

/** The name under which a heading can be linked to: small letters, digits and dashes. */
export const anchorOf = (heading: string): string =>
  heading
    .replaceAll(/[`*]/g, '')
    .replaceAll(/\[([^\]]*)\]\([^)]*\)/g, '$1')
    .trim()
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N} _-]/gu, '')
    .replaceAll(' ', '-');

export const anchorsOf = (text: string): ReadonlySet<string> =>
  new Set([...withoutBlocks(text).matchAll(/^#{1,6} (.+)$/gm)].map((heading) => anchorOf(heading[1]!)));

/** Targets of the links and pictures of a page, as written. */
export const linksOf = (text: string): string[] => [...withoutBlocks(text).matchAll(/\]\(([^)\s]+)\)/g)].map((link) => link[1]!);

/** The rows of the tables of a page whose head begins with `first`, cells without their spaces. */
export function tableRows(text: string, first: string): string[][] {
  const lines = text.split('\n');
  const head = lines.findIndex((line) => cellsOf(line)[0] === first);
  if (head < 0) throw new Error(`no table begins with the column "${first}"`);
  const end = lines.findIndex((line, i) => i > head && !line.startsWith('|'));
  return lines.slice(head + 2, end < 0 ? undefined : end).map(cellsOf);
}

const cellsOf = (line: string): string[] =>
  line
    .split('|')
    .slice(1, -1)
    .map((cell) => cell.trim());
