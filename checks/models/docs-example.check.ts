import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { Caution, CircuitSpec, FaultMode, ModelFile, packageNames, resolveModels } from '../../src/bench/models/index.ts';
import { loadModels } from '../../src/edges/models/load-models.ts';

const page = await readFile(join(import.meta.dirname, '../../docs/model-format.md'), 'utf8');
const block = (language: string): string => new RegExp(`^\`\`\`${language}\\n([\\s\\S]*?)^\`\`\``, 'm').exec(page)![1]!;

/** The parsed example, after the whole model, that shows a section. */
const blockWith = (section: string): Record<string, unknown> =>
  [...page.matchAll(/^```yaml\n([\s\S]*?)^```/gm)]
    .slice(1)
    .map((match) => parse(match[1]!) as Record<string, unknown>)
    .find((each) => section in each)!;

describe('docs/model-format.md', () => {
  it('shows a whole model with readings that loads as it stands', async () => {
    const dir = await mkdtemp(join(tmpdir(), 'example-'));
    await mkdir(join(dir, 'pocket-radio'));
    await writeFile(join(dir, 'pocket-radio/model.yaml'), block('yaml'));
    await writeFile(join(dir, 'pocket-radio/readings.csv'), block('csv'));
    const { models, problems } = await loadModels(dir);
    await rm(dir, { recursive: true });
    expect(problems).toEqual([]);
    expect(models.get('pocket-radio')!.readings).toHaveLength(6);
  });

  it('shows every section of the format, and names every fault mode and caution', () => {
    const shown = new Set(Object.keys(parse(block('yaml')) as object));
    const explained = (name: string): boolean => shown.has(name) || page.includes(`\`${name}\``) || page.includes(`${name}:`);
    expect(Object.keys(ModelFile.shape).filter((section) => !explained(section))).toEqual([]);
    expect([...FaultMode.options, ...Caution.options].filter((word) => !page.includes(`\`${word}\``))).toEqual([]);
  });

  it('shows panels, fasteners with places, and steps with alternatives that fit the whole model', () => {
    const model = resolveModels(new Map([['pocket-radio', { ...(parse(block('yaml')) as object), ...blockWith('panels') }]]));
    expect([...model.problems.values()]).toEqual([]);
    expect(model.files.get('pocket-radio')!.steps.some(({ after_any }) => after_any.length > 0)).toBe(true);
  });

  it('shows a circuit that has the shape of one, with each kind of need, and names every package', () => {
    const circuit = CircuitSpec.parse(blockWith('circuit')['circuit']);
    const kinds = new Set(Object.values(circuit.functions).flatMap(({ needs }) => needs.map((need) => Object.keys(need)[0])));
    expect([...kinds].sort()).toEqual(['ohms', 'part', 'rail', 'volts']);
    expect(page).toContain('{ amps: ');
    expect(packageNames().filter((name) => !page.includes(`\`${name}\``))).toEqual([]);
  });
});
