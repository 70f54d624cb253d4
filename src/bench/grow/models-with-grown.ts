import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import { buildModel, type Shelf } from './build-model.ts';

type Grown = Pick<BenchState, 'grown' | 'grownThen'>;

/**
 * The models of the folders and the grown ones of a state, as one map that is always up to date: a model that has grown is another object, one that has not
 * is the same. A model of the folder keeps its name against a grown one. Older versions that things were judged with are found by their keys, and not listed.
 */
export function modelsWithGrown(shelf: Shelf, stateNow: () => Grown): ReadonlyMap<string, Model> {
  return new WithGrown(shelf, stateNow);
}

class WithGrown implements ReadonlyMap<string, Model> {
  constructor(
    private readonly shelf: Shelf,
    private readonly stateNow: () => Grown,
  ) {}

  get size(): number {
    return [...this.keys()].length;
  }

  get(id: string): Model | undefined {
    return this.shelf.get(id) ?? this.grown(id);
  }

  has(id: string): boolean {
    return this.get(id) !== undefined;
  }

  *keys(): MapIterator<string> {
    yield* this.shelf.keys();
    for (const id of this.stateNow().grown.keys()) if (!this.shelf.has(id) && this.grown(id)) yield id;
  }

  *entries(): MapIterator<[string, Model]> {
    for (const id of this.keys()) yield [id, this.get(id)!];
  }

  *values(): MapIterator<Model> {
    for (const [, model] of this.entries()) yield model;
  }

  [Symbol.iterator](): MapIterator<[string, Model]> {
    return this.entries();
  }

  forEach(each: (model: Model, id: string, map: ReadonlyMap<string, Model>) => void): void {
    for (const [id, model] of this) each(model, id, this);
  }

  private grown(id: string): Model | undefined {
    const { grown: newest, grownThen } = this.stateNow();
    const grown = newest.get(id) ?? grownThen.get(id);
    return grown && buildModel(grown, this.shelf)?.model;
  }
}
