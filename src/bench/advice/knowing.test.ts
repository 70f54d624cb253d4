import { describe, expect, it } from 'vitest';
import { believe, nextChecks, type Evidence } from '../../core/diagnosis/index.ts';
import { assertDistribution, meanOf } from '../../core/planning/index.ts';
import { bestRepair } from './best-repair.ts';
import { deviceModelOf } from './device-model.ts';
import { tellingOf, type Telling } from './knowing.ts';
import { pocketModel } from './testing/pocket-model.ts';

const model = pocketModel();
const device = deviceModelOf(model);
const stakes = {
  workingMinor: 4880,
  asIsMinor: 1000,
  hourMinor: 1000,
  openingMinutes: { open: 6, 'board-out': 6 },
  stage: 'closed',
} as const;

const repairOn = (evidence: readonly Evidence[], telling?: Partial<Telling>) => {
  const belief = believe(device, evidence);
  const told = tellingOf(nextChecks(device, belief, evidence, stakes));
  return bestRepair(model, device, belief, stakes, { ...told, ...telling });
};

const batteryIsIt: Evidence[] = ['a', 'b', 'c'].flatMap((id): Evidence[] => [
  { id, kind: 'trial', function: 'power', outcome: 'fails', with: [] },
  { id: `${id}+`, kind: 'trial', function: 'sound', outcome: 'works', with: ['good-battery'] },
  { id: `${id}=`, kind: 'trial', function: 'picture', outcome: 'works', with: ['good-battery'] },
]);

describe('finding the trouble first', () => {
  it('lies between trying in the dark and knowing all for nothing', () => {
    const first = repairOn([]);
    const free = repairOn([], { bitsPerMinute: 1e9, bits: 1e9 });
    expect(first.lookFirst).toBe(true);
    expect(meanOf(first.outcomes)).toBeGreaterThan(first.plan.expectedMinor);
    expect(meanOf(first.outcomes)).toBeLessThan(meanOf(free.outcomes));
    expect(first.knowing!.checkMinutes).toBeGreaterThan(1);
  });

  it('is worth less the slower the checks tell, until trying in the dark is better', () => {
    const worth = [1, 0.1, 0.01].map((bitsPerMinute) => repairOn([], { bitsPerMinute, minutes: 1e6 }).knowing!.valueMinor);
    expect(worth[0]).toBeGreaterThan(worth[1]!);
    expect(worth[1]).toBeGreaterThan(worth[2]!);
    expect(repairOn([], { bitsPerMinute: 0.001, minutes: 1e6 }).lookFirst).toBe(false);
  });

  it('gives way to acting once the trouble is known', () => {
    const known = repairOn(batteryIsIt);
    expect(known.lookFirst).toBe(false);
    expect(known.plan.steps[0]!.remedy.id).toBe('new-battery');
  });

  it('does nothing without checks, and counts only the share that few checks can tell', () => {
    expect(repairOn([], { bitsPerMinute: 0 }).knowing).toBeNull();
    const few = repairOn([], { bits: 0.5 }).knowing!;
    expect(few.share).toBeLessThan(0.5);
    assertDistribution(few.outcomes);
    expect(meanOf(few.outcomes)).toBeCloseTo(few.valueMinor, 6);
  });
});
