import type { Body, FactSection, FactSource, MarkedPart } from '../events/index.ts';
import type { ReferenceReading } from '../models/index.ts';

/** Who put something into a model, and when. */
export interface Told {
  readonly eventId: string;
  readonly at: string;
  /** Empty for this bench; else the author of the bundle that it came in. */
  readonly author: string;
}

/** One change of the model file. The last one of a place counts. */
export interface GrownFact extends Told {
  readonly section: FactSection;
  readonly id: string;
  /** Null: `value` is the whole entry. */
  readonly field: string | null;
  /** Null takes it away. */
  readonly value: Body<'model-fact-set'>['value'];
  readonly source: FactSource;
}

type PhotoBody = Body<'model-photo-set'>;

export interface GrownPhoto extends Told {
  readonly photo: string;
  /** Of the picture on which it was marked, px; null where that was not said. */
  readonly size: NonNullable<PhotoBody['size']> | null;
  readonly corners: PhotoBody['corners'];
  readonly scale: NonNullable<PhotoBody['scale']> | null;
  readonly mirror: PhotoBody['mirror'];
}

export interface GrownPart extends Told, MarkedPart {}

export interface PinJoin extends Told {
  readonly pins: readonly string[];
  readonly joined: boolean;
}

export interface NetName extends Told {
  readonly pin: string;
  readonly name: string;
}

export interface GrownNetlist extends Told {
  readonly text: string;
  readonly from: 'typed' | 'imported';
}

export interface TaughtReading extends Told, ReferenceReading {
  readonly revision: string;
  readonly itemId: string | null;
}

/** Where a recorded step is to be seen: a photo, and on it its fasteners, px. */
export interface StepPhoto extends Told {
  readonly step: string;
  readonly photo: string | null;
  readonly places: readonly (readonly [number, number])[];
}

export interface FitSeen extends Told {
  readonly slot: string;
  readonly otherModelId: string | null;
  readonly part: string | null;
  readonly outcome: Body<'model-fit-seen'>['outcome'];
  readonly itemId: string | null;
}

export interface TakenIn extends Told {
  readonly licence: string;
  readonly facts: number;
}

/**
 * A model as it grew on the bench: what it was begun from, and every fact told since, oldest first. Never changed in place: each event
 * makes a new one, so that what was judged with an older version still has it.
 */
export interface GrownModel {
  readonly id: string;
  readonly name: string;
  readonly revision: string;
  readonly currency: string;
  readonly from: Body<'model-begun'>['from'];
  /** The grown model that it is a copy of, as that one was then; null for a copy of a model of the folder, and for no copy. */
  readonly copied: GrownModel | null;
  readonly begun: Told;
  /** How many events in force made it. */
  readonly version: number;
  readonly facts: readonly GrownFact[];
  readonly photos: Readonly<Partial<Record<'front' | 'back', GrownPhoto>>>;
  readonly parts: ReadonlyMap<string, GrownPart>;
  readonly joins: readonly PinJoin[];
  readonly names: readonly NetName[];
  readonly netlist: GrownNetlist | null;
  readonly readings: readonly TaughtReading[];
  readonly stepPhotos: readonly StepPhoto[];
  readonly fits: readonly FitSeen[];
  readonly taken: readonly TakenIn[];
}

/** A model that has only just begun. */
export const beginModel = (body: Body<'model-begun'>, begun: Told, copied: GrownModel | null): GrownModel => ({
  id: body.model_id,
  name: body.name,
  revision: body.revision,
  currency: body.currency,
  from: body.from,
  copied,
  begun,
  version: 1,
  facts: [],
  photos: {},
  parts: new Map(),
  joins: [],
  names: [],
  netlist: null,
  readings: [],
  stepPhotos: [],
  fits: [],
  taken: [],
});
