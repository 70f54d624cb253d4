import { newItem } from '../fold/empty-state.ts';
import type { Model } from '../models/index.ts';
import type { Item } from '../state.ts';

/** A unit as it will lie there when it has come: closed, whole, nothing done to it. */
export const freshUnit = (model: Model): Item =>
  newItem({
    id: 'not-bought',
    number: 0,
    name: model.file.name,
    kind: 'unit',
    modelId: model.file.id,
    lotId: null,
    slot: '',
    status: 'on-the-bench',
    demo: false,
  });
