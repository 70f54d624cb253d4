import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { deviceModelOf } from '../../src/bench/advice/device-model.ts';
import type { Model } from '../../src/bench/models/index.ts';
import { believe, nextChecks, repairPlan, type Belief, type Evidence, type Stage, type Stakes } from '../../src/core/diagnosis/index.ts';
import { loadModels } from '../../src/edges/models/load-models.ts';

let models: ReadonlyMap<string, Model>;
beforeAll(async () => void ({ models } = await loadModels(join(import.meta.dirname, '../../models'))));

type Piece = Evidence extends infer E ? (E extends { id: string } ? Omit<E, 'id'> : never) : never;
const claim = (fn: string, says: 'works' | 'fails'): Piece => ({ kind: 'claim', function: fn, says, honesty: 0.8 });
const trial = (fn: string, outcome: 'works' | 'fails', ...aids: string[]): Piece => ({ kind: 'trial', function: fn, outcome, with: aids });
const see = (block: string, sees: string): Piece => ({ kind: 'finding', block, sees });
const reading = (point: string, value: number | null): Piece => ({ kind: 'reading', point, value });

/** Belief, best check and plan of a unit of a model, with typical prices and the hour at 10.00. */
function adviceOn(id: string, pieces: readonly Piece[], stage: Stage = 'closed') {
  const { file } = models.get(id)!;
  const whole = deviceModelOf(models.get(id)!);
  const swaps = new Set(file.remedies.filter(({ kind }) => kind === 'transplant').map((remedy) => remedy.id));
  const device = { ...whole, remedies: whole.remedies.filter((remedy) => !swaps.has(remedy.id)) };
  const evidence = pieces.map((piece, index) => ({ ...piece, id: `e${index}` }) as Evidence);
  const stakes: Stakes = {
    workingMinor: file.prices.working * 0.88 - 400,
    asIsMinor: file.prices.for_parts * 0.88 - 400,
    hourMinor: 1000,
    openingMinutes: { open: file.opening_minutes.open, 'board-out': file.opening_minutes.board_out },
    stage,
  };
  const belief = believe(device, evidence);
  return { belief, best: nextChecks(device, belief, evidence, stakes, { limit: 1 })[0]!, plan: repairPlan(device, belief, stakes) };
}

const likeliest = (belief: Belief, count: number): string[] =>
  [...belief.marginal]
    .sort((a, b) => b[1] - a[1])
    .slice(0, count)
    .map(([fault]) => fault);

describe('what the shipped models advise', () => {
  it.each(['any-pocket-player', 'tern-tn10', 'tern-tn20', 'corrie-cp4'])(
    '%s: an untested unit is tried or looked at before it is opened',
    (id) => {
      const { best } = adviceOn(id, []);
      expect(best.check).toMatchObject({ stage: 'closed' });
      expect(best.check.kind).not.toBe('measure');
      expect(best.minutes).toBeLessThanOrEqual(3);
    },
  );

  it('TN-10: one that does not start with its own cells and does with fresh ones had flat cells', () => {
    const { belief, plan } = adviceOn('tern-tn10', [
      claim('starts', 'fails'),
      trial('starts', 'fails'),
      trial('starts', 'works', 'good-cells'),
      trial('picture', 'works', 'good-cells'),
    ]);
    expect(likeliest(belief, 1)).toEqual(['cells-flat']);
    expect(plan.steps[0]!.remedy.id).toBe('fresh-cells');
  });

  it('TN-10: crust on the contacts of a dead one is cleaned off before anything is opened', () => {
    const { belief, plan } = adviceOn('tern-tn10', [trial('starts', 'fails', 'good-cells'), see('battery-contacts', 'corrosion')]);
    expect(belief.marginal.get('contacts-corroded')).toBeGreaterThan(0.75);
    expect(plan.steps[0]!.remedy.id).toBe('clean-contacts');
  });

  it('TN-10: OL from battery spring to fuse leaves the fuse and the eaten track, and looking tells them apart', () => {
    const dead = [trial('starts', 'fails', 'good-cells'), reading('VBAT', 3.11), reading('FUSE', null)];
    const { belief } = adviceOn('tern-tn10', dead, 'board-out');
    expect(likeliest(belief, 2).sort()).toEqual(['fuse-open', 'track-eaten']);
    const after = adviceOn('tern-tn10', [...dead, see('battery-track', 'track-damaged')], 'board-out');
    expect(after.belief.marginal.get('track-eaten')).toBeGreaterThan(0.85);
    expect(after.plan.steps[0]!.remedy.id).toBe('bridge-track');
  });

  it('TN-10: sound in headphones and none from the speaker rules out what both need', () => {
    const plays = [trial('starts', 'works', 'good-cells'), trial('sound', 'fails', 'good-cells')];
    const { belief } = adviceOn('tern-tn10', [...plays, trial('phones', 'works', 'good-cells')]);
    expect(likeliest(belief, 1)).toEqual(['speaker-open']);
    const before = adviceOn('tern-tn10', plays).belief.marginal.get('sound-capacitors')!;
    expect(belief.marginal.get('sound-capacitors')).toBeLessThan(before / 3);
  });

  it('TN-20: one that starts on a known-good cell and charges none has trouble at the port or the charging chip', () => {
    const { belief } = adviceOn('tern-tn20', [
      trial('starts', 'works', 'good-battery'),
      trial('charges', 'fails', 'good-charger', 'good-battery'),
    ]);
    expect(likeliest(belief, 3).sort()).toEqual(['charge-control-dead', 'charge-port-torn', 'charge-port-worn']);
  });

  it('TN-20: a supply that sags, and 0.4 Ω from the 5 V rail to ground, are a shorted rail', () => {
    const { belief } = adviceOn(
      'tern-tn20',
      [trial('starts', 'fails', 'good-battery'), reading('VSYS', 1.9), reading('V50-R', 0.4)],
      'board-out',
    );
    expect(belief.marginal.get('rail-shorted')).toBeGreaterThan(0.8);
  });

  it('CP-4: reels that stand still on fresh cells are a belt first, and tar settles it', () => {
    const still = trial('turns', 'fails', 'good-cells');
    expect(likeliest(adviceOn('corrie-cp4', [still]).belief, 1)).toEqual(['belt-perished']);
    const { belief, plan } = adviceOn('corrie-cp4', [still, see('belt', 'residue')], 'open');
    expect(belief.marginal.get('belt-perished')).toBeGreaterThan(0.8);
    expect(plan.steps[0]!.remedy.id).toBe('new-belt');
  });
});
