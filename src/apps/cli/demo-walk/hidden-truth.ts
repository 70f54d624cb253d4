import { deviceModelOf } from '../../../bench/advice/device-model.ts';
import type { FindingKind } from '../../../bench/events/index.ts';
import type { Model } from '../../../bench/models/index.ts';
import type { Behaviour, TestPoint } from '../../../core/diagnosis/model.ts';
import type { RandomStream } from '../../../core/numeric/index.ts';
import { behaviourOf, drawFlaws, lookOf, unknownFlaw, type Flaw } from './flaw.ts';

const RANK: readonly Behaviour[] = ['works', 'comes-and-goes', 'fails'];
const worst = (behaviours: readonly Behaviour[]): Behaviour => RANK[Math.max(0, ...behaviours.map((each) => RANK.indexOf(each)))]!;
const best = (behaviours: readonly Behaviour[]): Behaviour => RANK[Math.min(...behaviours.map((each) => RANK.indexOf(each)))]!;

interface Truth {
  readonly model: Model;
  flaws: Flaw[];
  /** Assemblies put in, by slot; null for a slot that was emptied. */
  readonly slots: Map<string, string | null>;
}

/** What is really wrong with everything in the walk. The bench never reads it: it only hears what the person tries, sees and measures. */
export class HiddenTruth {
  readonly #things = new Map<string, Truth>();

  constructor(private readonly random: RandomStream) {}

  /** A unit that is sold as faulty comes into the world. */
  addUnit(id: string, model: Model): void {
    const nameOf = (fault: string) => model.file.faults.find((each) => each.id === fault)!.name;
    this.#things.set(id, { model, flaws: drawFlaws(deviceModelOf(model), nameOf, this.random), slots: new Map() });
  }

  flawsOf(id: string): readonly Flaw[] {
    const thing = this.#thing(id);
    return [...thing.flaws, ...[...thing.slots.values()].flatMap((guest) => (guest === null ? [] : this.#thing(guest).flaws))];
  }

  /** How a function behaves when it is tried with these known-good accessories. */
  tryFunction(id: string, functionId: string, accessories: readonly string[]): Behaviour {
    const { model, slots } = this.#thing(id);
    const device = deviceModelOf(model);
    const stoodIn = new Set(device.accessories.filter((each) => accessories.includes(each.id)).map((each) => each.block));
    const flaws = this.flawsOf(id);
    const behaves = (block: string): Behaviour => {
      if (stoodIn.has(block)) return 'works';
      const slot = slotOfBlock(model, block);
      if (slot !== undefined && slots.get(slot) === null) return 'fails';
      return worst(flaws.filter((flaw) => flaw.fault.block === block).map((flaw) => behaviourOf(flaw, functionId, this.random)));
    };
    const needs = device.functions.find((each) => each.id === functionId)!.needs;
    return worst(needs.map((choices) => best(choices.map(behaves))));
  }

  look(id: string, block: string): FindingKind {
    const seen = this.flawsOf(id)
      .filter((flaw) => flaw.fault.block === block)
      .map((flaw) => lookOf(flaw, this.random));
    return (seen.find((kind) => kind !== 'nothing-wrong') ?? 'nothing-wrong') as FindingKind;
  }

  /** What the meter shows at a point: null is OL. */
  measure(id: string, pointId: string): number | null {
    const point = deviceModelOf(this.#thing(id).model).points.find((each) => each.id === pointId)!;
    const shift = this.flawsOf(id)
      .map((flaw) => flaw.fault.shifts[pointId])
      .find((each) => each !== undefined);
    const good = this.#goodReading(point);
    if (shift === undefined) return good;
    if (shift === 'zero') return point.mode === 'diode' || point.mode === 'ohms' ? 0.4 : 0.003;
    if (shift === 'open') return point.mode === 'volts' || point.mode === 'amps' ? 0.002 : null;
    const base = good ?? 1000;
    if (shift === 'any') return round3(base * 2 * this.random());
    return round3(shift === 'low' ? base * (0.25 + 0.3 * this.random()) : base * (1.6 + this.random()));
  }

  /** Does the work: each flaw that the remedy mends goes by its chance; with its risk the work ruins a block. */
  mend(id: string, remedyId: string): void {
    const remedy = deviceModelOf(this.#thing(id).model).remedies.find((each) => each.id === remedyId)!;
    for (const thing of [id, ...this.#guests(id)].map((each) => this.#thing(each)))
      thing.flaws = thing.flaws.filter((flaw) => this.random() >= (remedy.mends[flaw.fault.id] ?? 0));
    if (this.random() < remedy.risk) this.#thing(id).flaws.push(unknownFlaw(deviceModelOf(this.#thing(id).model), this.random));
  }

  /** What is wrong with an assembly leaves its unit with it. */
  takeOut(unitId: string, slot: string, assemblyId: string): void {
    const unit = this.#thing(unitId);
    if (!this.#things.has(assemblyId)) {
      const leaves = (flaw: Flaw) => slotOfBlock(unit.model, flaw.fault.block) === slot;
      this.#things.set(assemblyId, { model: unit.model, flaws: unit.flaws.filter(leaves), slots: new Map() });
      unit.flaws = unit.flaws.filter((flaw) => !leaves(flaw));
    }
    unit.slots.set(slot, null);
  }

  putIn(unitId: string, slot: string, assemblyId: string): void {
    this.#thing(unitId).slots.set(slot, assemblyId);
  }

  #guests(id: string): string[] {
    return [...this.#thing(id).slots.values()].filter((guest) => guest !== null);
  }

  #goodReading({ reference }: TestPoint): number | null {
    if (!reference || reference.mean === null) return null;
    const bell = this.random() + this.random() + this.random() + this.random() - 2;
    return round3(reference.mean + reference.spread * bell * Math.sqrt(3));
  }

  #thing(id: string): Truth {
    return this.#things.get(id)!;
  }
}

const slotOfBlock = (model: Model, block: string): string | undefined => model.file.blocks.find((each) => each.id === block)?.assembly;
const round3 = (value: number): number => Number(value.toPrecision(4));
