import { describe, expect, it } from 'vitest';
import { heatFor, recipeFor, RECIPES } from './index.ts';

const actions = [...RECIPES.values()].flatMap(({ actions: own }) => own);

describe('the written recipes', () => {
  it('each say what is needed, what to do, what to look at after, and when to stop', () => {
    for (const { materials, actions: own, inspect, stopWhen, source } of RECIPES.values()) {
      expect([materials, own, inspect, stopWhen].every((list) => list.length > 0)).toBe(true);
      expect(source).toContain('no source');
    }
  });

  it('warn at each action with heat, with alcohol, and with a cell', () => {
    const missing = (pattern: RegExp, caution: string) =>
      actions.filter(({ text, cautions }) => pattern.test(text) && !cautions.some((each) => each === caution)).map(({ text }) => text);
    expect(actions.filter(({ heat, cautions }) => heat && !(cautions.includes('hot-tool') && cautions.includes('fumes')))).toEqual([]);
    expect(missing(/\bwith alcohol\b|alcohol and a brush|swab of alcohol/i, 'solvent')).toEqual([]);
    expect(missing(/^Battery out|battery out|swollen/i, 'lithium-cell')).toEqual([]);
  });

  it('solder anchor tabs before signal pins in a connector', () => {
    const texts = RECIPES.get('replace-connector')!.actions.map(({ text }) => text);
    const place = (pattern: RegExp) => texts.findIndex((text) => pattern.test(text));
    expect(place(/^Anchor tabs first/)).toBeGreaterThan(0);
    expect(place(/^Then the signal pins/)).toBe(place(/^Anchor tabs first/) + 1);
  });

  it('are found by name, by kind and by slot, and are none where one would mislead', () => {
    expect(recipeFor({ kind: 'replace', recipe: 'replace-speaker' })!.id).toBe('replace-speaker');
    expect(recipeFor({ kind: 'reflow' })!.id).toBe('refresh-joint');
    expect(recipeFor({ kind: 'transplant', slot: 'board' })!.id).toBe('replace-board');
    expect(recipeFor({ kind: 'transplant', slot: 'battery' })!.id).toBe('replace-cell');
    expect(recipeFor({ kind: 'replace' })).toBeNull();
    expect(recipeFor({ kind: 'adjust' })).toBeNull();
  });

  it('take the heat of tools from the alloy', () => {
    const fine = actions.find(({ heat }) => heat === 'tip-fine')!;
    const [leaded, free] = [heatFor(fine, 'Sn63Pb37')!, heatFor(fine, 'SAC305')!];
    expect(leaded).toEqual([285, 310]);
    expect(free[0] - leaded[0]).toBeGreaterThan(30);
    expect(
      heatFor(
        actions.find(({ heat }) => !heat)!,
        'SAC305',
      ),
    ).toBeNull();
  });
});
