import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assertBelief, believe, type DeviceModel, type Evidence } from './index.ts';

interface Case {
  readonly title: string;
  readonly model: string;
  readonly evidence: readonly Evidence[];
  readonly expect: {
    readonly likeliest?: readonly string[];
    readonly odd?: readonly string[];
    readonly absent?: readonly string[];
    readonly above?: Readonly<Record<string, number>>;
    readonly below?: Readonly<Record<string, number>>;
    readonly unknownAbove?: number;
  };
}

const folder = new URL('cases/', import.meta.url);
const read = (name: string): unknown => JSON.parse(readFileSync(new URL(name, folder), 'utf8'));
const cases = readdirSync(folder).flatMap((name) => {
  const content = read(name) as Partial<Case>;
  return content.expect ? [content as Case] : [];
});

describe('kept cases', () => {
  it('are all there', () => expect(cases).toHaveLength(6));

  it.each(cases)('$title', ({ model, evidence, expect: wanted }) => {
    const belief = believe(read(`${model}.json`) as DeviceModel, evidence);
    assertBelief(belief);
    if (wanted.likeliest) expect(belief.sets[0]!.faults).toEqual(wanted.likeliest);
    if (wanted.odd) expect(belief.odd.map(({ evidenceId }) => evidenceId)).toEqual(wanted.odd);
    expect([...belief.absent]).toEqual(wanted.absent ?? []);
    for (const [fault, chance] of Object.entries(wanted.above ?? {})) expect(belief.marginal.get(fault)).toBeGreaterThan(chance);
    for (const [fault, chance] of Object.entries(wanted.below ?? {})) expect(belief.marginal.get(fault)).toBeLessThan(chance);
    expect(belief.unknown).toBeGreaterThan(wanted.unknownAbove ?? 0);
  });
});
