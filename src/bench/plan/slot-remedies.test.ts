import { describe, expect, it } from 'vitest';
import { chanceAfter } from '../../core/planning/index.ts';
import type { FaultClass } from './fault-classes.ts';
import { slotRemedies, type Step } from './slot-remedies.ts';

const NOTHING_TOLD = { bitsPerMinute: 0, bits: 0, minutes: 0 };
const STAKES = { workingMinor: 6000, asIsMinor: 900, hourMinor: 1200 };
const CLASSES: readonly FaultClass[] = [
  { id: 'works', chance: 0.4, faults: [], unknown: false },
  { id: 'dirty', chance: 0.3, faults: ['dirty'], unknown: false },
  { id: 'fuse', chance: 0.2, faults: ['fuse'], unknown: false },
  { id: 'dirty+fuse', chance: 0.05, faults: ['dirty', 'fuse'], unknown: false },
  { id: 'unknown', chance: 0.05, faults: [], unknown: true },
];

const step = (id: string, mends: Record<string, number>, minutes: number, risk = 0, uses: Record<string, number> = {}): Step => ({
  cure: { id, mends, minutes, partsMinor: 0, risk },
  uses,
  boughtMinor: Object.keys(uses).length * 100,
});
const CLEAN = step('clean', { dirty: 0.9 }, 6);
const FUSE = step('fuse', { fuse: 0.8 }, 20, 0, { 'fuse-1a': 1 });

const faults = Object.fromEntries(CLASSES.map(({ id, chance }) => [id, chance]));
const after = (remedies: ReturnType<typeof slotRemedies>, id: string): number =>
  chanceAfter(
    { slot: 'board', faults, remedies },
    remedies.find((remedy) => remedy.id === id)!,
  );

describe('the ways to treat an assembly', () => {
  it('are rows of remedies, the best for its cost first, and each alone', () => {
    const remedies = slotRemedies(CLASSES, [FUSE, CLEAN], STAKES, NOTHING_TOLD);
    expect(remedies.map(({ id }) => id)).toEqual(['clean', 'clean+fuse', 'fuse']);
    expect(after(remedies, 'clean')).toBeCloseTo(0.4 + 0.3 * 0.9, 12);
    expect(after(remedies, 'clean+fuse')).toBeCloseTo(0.4 + 0.3 * 0.9 + 0.2 * 0.8 + 0.05 * 0.9 * 0.8, 12);
  });

  it('take the minutes of a step only as often as it is come to, and its parts always', () => {
    const row = slotRemedies(CLASSES, [FUSE, CLEAN], STAKES, NOTHING_TOLD).find(({ id }) => id === 'clean+fuse')!;
    expect(row.minutes).toBeCloseTo(0.6 * 6 + (0.6 - 0.27) * 20, 12);
    expect(row.minutesSpread).toBeGreaterThan(0);
    expect(row.uses).toEqual({ 'fuse-1a': 1 });
  });

  it('ruin only what did not work yet', () => {
    const [risky] = slotRemedies(CLASSES, [step('reflow', { dirty: 1, fuse: 1 }, 10, 0.25)], STAKES, NOTHING_TOLD);
    expect(after([risky!], 'reflow')).toBeCloseTo(0.4 + 0.75 * 0.55, 12);
  });

  it('leave out what hardly helps, and have none where nothing is wrong', () => {
    expect(slotRemedies(CLASSES, [step('wax', { dirty: 0.001 }, 1)], STAKES, NOTHING_TOLD)).toEqual([]);
    expect(slotRemedies([{ id: 'works', chance: 1, faults: [], unknown: false }], [CLEAN], STAKES, NOTHING_TOLD)).toEqual([]);
  });

  it('have finding the trouble first where checks can tell it, with the minutes of checks and parts at the usual price', () => {
    const remedies = slotRemedies(CLASSES, [FUSE, CLEAN], STAKES, { bitsPerMinute: 0.5, bits: 4, minutes: 30 });
    const found = remedies.find(({ id }) => id === 'find-first')!;
    expect(found.mends['fuse']).toBeCloseTo(0.8, 12);
    expect(found.costMinor).toBeCloseTo(0.25 * 100, 12);
    // 0.6 · 20 and more minutes of work would be done in the dark; checks take the bits to tell four courses apart at half a bit a minute.
    expect(found.minutes).toBeGreaterThan(0.3 * 6 + 0.2 * 20 + 0.05 * 26);
    expect(found.minutes).toBeLessThan(0.3 * 6 + 0.2 * 20 + 0.05 * 26 + 4);
  });
});
