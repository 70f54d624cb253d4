import { describe, expect, it } from 'vitest';
import type { AdviceView } from '../views/index.ts';
import { createAdvisor } from './advisor.ts';
import { benchOf, bought } from './testing/bench-of.ts';
import { pocketModel, pocketModels } from './testing/pocket-model.ts';

type Steps = Parameters<typeof benchOf>[0];
type Step = Steps[number];

const models = pocketModels();
const { file } = models.get('pocket-1')!;

/** A unit with known faults that answers as its model says it most likely would, and a person who does as advised. */
class Unit {
  readonly faults: Set<string>;

  constructor(faults: readonly string[]) {
    this.faults = new Set(faults);
  }

  follow(advice: AdviceView): Step[] {
    if (advice.check) return [this.answer(advice.check)];
    if (advice.do === 'remedy') return [this.work(advice.remedy!.id)];
    return advice.do === 'prove' ? [this.prove(advice.id.slice('prove.'.length))] : [];
  }

  private answer(check: NonNullable<AdviceView['check']>): Step {
    if (check.kind === 'try') {
      const outcome = this.works(check.target, check.with.length > 0) ? 'works' : 'fails';
      return ['trial-done', { item_id: 'u1', function: check.target, outcome, with: check.with }];
    }
    if (check.kind === 'look') return ['finding-noted', { item_id: 'u1', place: check.target, sees: this.sight(check.target) }];
    return ['reading-taken', { item_id: 'u1', point: check.target, mode: 'volts', value: this.volts() }];
  }

  private works(fn: string, withBattery: boolean): boolean {
    const needs = file.functions.find(({ id }) => id === fn)!.needs as string[];
    return !needs.some((block) => this.at(block).length > 0 && !(withBattery && block === 'battery'));
  }

  private at(block: string) {
    return file.faults.filter((fault) => fault.block === block && this.faults.has(fault.id));
  }

  private sight(block: string): string {
    const seen = this.at(block).flatMap((fault) => Object.entries(fault.seen).filter(([, chance]) => chance >= 0.5));
    return seen[0]?.[0] ?? 'nothing-wrong';
  }

  private volts(): number {
    if (this.faults.has('converter-dead')) return 0.02;
    return this.faults.has('battery-flat') ? 2.1 : 3.29;
  }

  private work(id: string): Step {
    const { mends } = file.remedies.find((remedy) => remedy.id === id)!;
    for (const [fault, chance] of Object.entries(mends)) if (chance >= 0.5) this.faults.delete(fault);
    return ['remedy-done', { item_id: 'u1', remedy: id, minutes: 5, outcome: this.faults.size === 0 ? 'mended' : 'not-tried-yet' }];
  }

  private prove(step: string): Step {
    const passes = !step.startsWith('works.') || this.works(step.slice('works.'.length), false);
    return ['proof-step-done', { item_id: 'u1', step, outcome: passes ? 'pass' : 'fail' }];
  }
}

/** Follows the advice from the day the unit came until it is proved or given up; the deeds in their order. */
function followed(faults: readonly string[]) {
  const unit = new Unit(faults);
  const advisor = createAdvisor(models);
  const steps: Step[] = [...bought('lot', 'marsh-lane', ['u1'])];
  const deeds: string[] = [];
  for (let i = 0; i < 60; i++) {
    const { advice } = advisor.fileParts(benchOf(steps), 'u1');
    const next = unit.follow(advice);
    if (next.length === 0) return { end: advice.do, deeds, left: [...unit.faults] };
    deeds.push(advice.id);
    steps.push(...next);
  }
  return { end: 'never', deeds, left: [...unit.faults] };
}

const isCheck = (id: string): boolean => id.startsWith('check.');

describe('following the advice to the end', () => {
  it.each(['battery-flat', 'switch-dirty', 'converter-dead', 'contacts-dirty', 'speaker-open'])(
    'mends and proves a unit with: %s',
    (fault) => {
      const { end, deeds, left } = followed([fault]);
      expect(left).toEqual([]);
      expect(end).toBe('grade');
      expect(deeds.filter(isCheck).length).toBeLessThanOrEqual(14);
      expect(deeds.filter((id) => id.startsWith('remedy.')).length).toBeLessThanOrEqual(4);
    },
  );

  it('mends and proves a unit with two faults', () => {
    expect(followed(['battery-flat', 'contacts-dirty'])).toMatchObject({ end: 'grade', left: [] });
  });

  it('proves a unit that is well without working on it', () => {
    const { end, deeds } = followed([]);
    expect(end).toBe('grade');
    expect(deeds.filter((id) => id.startsWith('remedy.'))).toEqual([]);
  });

  it('ends with parting out where nothing can be mended', () => {
    const { end, deeds } = followed(['processor-dead']);
    expect(['part-out', 'leave']).toContain(end);
    expect(deeds.length).toBeLessThanOrEqual(20);
  });

  it.each(['battery-flat', 'processor-dead', 'contacts-dirty'])(
    'asks each check once while nothing is done, however dear the unit with: %s',
    (fault) => {
      const dear = new Map([['pocket-1', pocketModel({ prices: { working: 900_000, spread: 0.25, for_parts: 1500 } })]]);
      const unit = new Unit([fault]);
      const steps: Step[] = [...bought('lot', 'marsh-lane', ['u1'])];
      const asked: string[] = [];
      for (let i = 0; i < 30; i++) {
        const { advice } = createAdvisor(dear).fileParts(benchOf(steps, dear), 'u1');
        if (advice.do === 'nothing') break;
        if (advice.check) asked.push(advice.id);
        steps.push(...(advice.check ? unit.follow(advice) : [['advice-declined', { item_id: 'u1', advice: advice.id }] as Step]));
      }
      expect(asked.length).toBeGreaterThanOrEqual(3);
      expect(new Set(asked).size).toBe(asked.length);
    },
  );
});
