import { describe, expect, it } from 'vitest';
import { meets, quantile, type Figure } from './figure.ts';
import { markdownTable, textTable, withBlock } from './table.ts';

const figure = (value: number, target: string): Figure => ({ figure: 'path.x', value, unit: 's', target, reference: 'itself' });

describe('a figure', () => {
  it('meets an upper, a lower and an exact limit, and nothing where it is only shown', () => {
    expect([meets(figure(1, '≤ 1')), meets(figure(1.01, '≤ 1'))]).toEqual([true, false]);
    expect([meets(figure(0.9, '≥ .9')), meets(figure(0.89, '≥ 0.9'))]).toEqual([true, false]);
    expect([meets(figure(0, '= 0')), meets(figure(1, '= 0')), meets(figure(5, 'shown'))]).toEqual([true, false, undefined]);
  });

  it('is said to be missed in both tables when it is', () => {
    expect(textTable([figure(2, '≤ 1')])).toContain('missed');
    expect(markdownTable([figure(2, '≤ 1')], 'a machine', '2026-01-01')).toContain('| missed |');
  });
});

it('takes quantiles by the nearest rank', () => {
  expect(quantile([3, 1, 2, 4], 0.5)).toBe(2);
  expect(quantile([3, 1, 2, 4], 0.95)).toBe(4);
  expect(quantile([7], 0)).toBe(7);
});

it('replaces only the block of its own study in the page of figures', () => {
  const page = withBlock(withBlock('# Figures\n', 'path', 'old'), 'money', 'kept');
  const changed = withBlock(page, 'path', 'new');
  expect(changed).toContain('new');
  expect(changed).not.toContain('old');
  expect(changed).toContain('kept');
  expect(changed.startsWith('# Figures')).toBe(true);
});
