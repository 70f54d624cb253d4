import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { EXIT } from '../../src/apps/cli/stop.ts';
import {
  BODIES,
  Claim,
  Envelope,
  EVENT_VERSION,
  FindingKind,
  KINDS,
  LandPattern,
  MarkedPart,
  parseEvent,
  PART_KINDS as MARKED_KINDS,
} from '../../src/bench/events/index.ts';
import { DRAWING_COLUMNS, LIST_PAD_COLUMNS, PART_KINDS } from '../../src/bench/fit/index.ts';
import { parseReading } from '../../src/bench/parse-reading.ts';
import { Problem } from '../../src/bench/views/index.ts';
import { writeBundle } from '../../src/edges/bundle/index.ts';
import { openHome } from '../../src/edges/home.ts';
import { openPhotoStore } from '../../src/edges/photos/index.ts';
import type { Figure } from '../figures/figure.ts';
import { eventFields } from './event-fields.ts';
import { pageText, tableRows } from './pages.ts';

const PAGE = pageText('docs/formats.md');
const example = (kind: string): unknown => JSON.parse(new RegExp(`^\`\`\`json ${kind}\\n([\\s\\S]*?)^\`\`\``, 'm').exec(PAGE)![1]!);
const inCode = (cell: string): string => cell.replaceAll('`', '');

describe('the event log in docs/formats.md', () => {
  it('has every kind with the fields of its schema, and what it says', () => {
    const rows = tableRows(PAGE, 'kind').filter(([kind]) => kind !== '`kind`');
    expect(rows.map(([kind, , fields]) => `${inCode(kind!)}: ${fields}`)).toEqual(
      [...eventFields()].map(([kind, fields]) => `${kind}: ${fields}`),
    );
    expect(rows.map(([, says]) => says)).not.toContain('');
    expect(rows).toHaveLength(KINDS.length);
  });

  it('has every field of the envelope, and the version that is written now', () => {
    const named = tableRows(PAGE, 'field').map(([field]) => inCode(field!));
    expect(named).toEqual([...Object.keys(Envelope.shape), 'kind', 'body']);
    expect(PAGE).toMatch(new RegExp(`schema version of the body, now ${EVENT_VERSION} `));
  });

  it('shows an event and claims of every sort that are taken as they stand', () => {
    expect(parseEvent(example('event'))).toMatchObject({ ok: true });
    const claims = z.array(Claim).parse(example('claims'));
    expect(claims.map(({ about }) => about).sort()).toEqual(Claim.options.map((option) => option.shape.about.value).sort());
  });

  it('shows beginnings of a model and marked parts that are taken as they stand, and names every kind of part', () => {
    expect(z.array(BODIES['model-begun'].shape.from).parse(example('from'))).toHaveLength(2);
    expect(z.array(MarkedPart).parse(example('parts'))).toMatchObject([{ rotation_deg: 0 }, { pins: [] }]);
    expect(MARKED_KINDS.filter((kind) => !PAGE.includes(`\`${kind}\``))).toEqual([]);
  });

  it('shows a pattern that is taken as it stands', () => {
    const pattern = { ...(example('pattern') as object) };
    expect(LandPattern.safeParse(pattern)).toMatchObject({
      success: true,
      data: { pads: [{ kind: 'surface' }, {}, { kind: 'peg' }] },
    });
    expect(Object.keys(LandPattern.shape).filter((name) => name !== 'contacts')).toEqual(Object.keys(pattern));
  });

  it('names the columns of a supplier’s list, and every kind of part', () => {
    const named = [...DRAWING_COLUMNS, ...LIST_PAD_COLUMNS, ...PART_KINDS];
    expect(named.filter((name) => !new RegExp(`\\b${name}\\b`).test(PAGE))).toEqual([]);
  });

  it('names everything that can be seen at a place', () => {
    expect(FindingKind.options.filter((kind) => !PAGE.includes(`\`${kind}\``))).toEqual([]);
  });
});

describe('what may be typed from a meter', () => {
  const rows = tableRows(PAGE, 'typed').map(([typed, means]) => [inCode(typed!), means!] as const);

  it.each(rows)('%s is %s', (typed, means) => {
    const parsed = parseReading(typed);
    if (means.startsWith('refused')) return expect(parsed.ok).toBe(false);
    expect(parsed).toEqual({ ok: true, ...meaning(means) });
  });

  it('has every mode, OL and refusals', () => {
    expect(['volts', 'ohms', 'diode', 'amps', 'OL', 'refused'].filter((word) => !rows.some(([, means]) => means.includes(word)))).toEqual(
      [],
    );
  });
});

/** "4700 ohms", "OL ohms", "3.28, in the mode of the point". */
function meaning(words: string): { mode: string | undefined; value: number | null } {
  const [, value, mode] = /^(OL|-?[\d.]+)(?: (\w+)|, in the mode of the point)$/.exec(words)!;
  return { mode, value: value === 'OL' ? null : Number(value) };
}

/** A bundle of a bench that holds nothing. */
async function emptyBundle(): Promise<Uint8Array> {
  const dir = mkdtempSync(join(tmpdir(), 'salvor-formats-'));
  const photos = openPhotoStore(dir);
  try {
    return await writeBundle([], photos);
  } finally {
    await photos.close();
    rmSync(dir, { recursive: true });
  }
}

describe('the other formats', () => {
  it('have examples with the fields that are written', async () => {
    expect(Problem.safeParse(example('problem')).success).toBe(true);
    const manifest = JSON.parse(strFromU8(unzipSync(await emptyBundle())['manifest.json']!)) as Record<string, unknown>;
    expect(Object.keys(example('manifest') as object)).toEqual(Object.keys(manifest));
    expect(example('manifest')).toMatchObject({ format: manifest.format, version: manifest.version });
    expect(Object.keys(example('figure') as object)).toEqual(['figure', 'value', 'unit', 'target', 'reference'] satisfies (keyof Figure)[]);
  });

  it('name everything in the folder of a bench', () => {
    const dir = mkdtempSync(join(tmpdir(), 'salvor-formats-'));
    const { database, modelCache } = openHome(dir);
    const names = [...readdirSync(dir), ...[database, modelCache].map((file) => file.slice(dir.length + 1))];
    rmSync(dir, { recursive: true });
    expect(names.filter((name) => !PAGE.includes(`\`${name}`))).toEqual([]);
    expect(names.length).toBeGreaterThan(4);
  });

  it('have the exit codes of the command line', () => {
    expect(tableRows(PAGE, 'code').map(([code]) => Number(code))).toEqual(Object.values(EXIT));
  });
});
