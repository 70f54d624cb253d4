import type { z } from 'zod';
import type { MarkedPart } from '../../../bench/events/index.ts';
import type { EditorPart } from './editor-part.ts';
import { kindOf, kindOfKept } from './part-kinds.ts';

/** A part as the log keeps it, what it may leave out being left out. */
export type PartBody = z.input<typeof MarkedPart>;

export const toBody = (part: EditorPart): PartBody => ({
  ref: part.ref,
  kind: kindOf(part.kind).kept,
  value: part.value,
  package: part.package,
  side: part.side,
  x_mm: part.x,
  y_mm: part.y,
  rotation_deg: part.rotation,
  ...(part.block === '' ? {} : { block: part.block }),
  pins: part.pins.map(([x, y]): [number, number] => [x, y]),
});

export const fromBody = (body: MarkedPart): EditorPart => ({
  ref: body.ref,
  kind: kindOfKept(body.kind, body.ref).id,
  value: body.value,
  package: body.package,
  side: body.side,
  x: body.x_mm,
  y: body.y_mm,
  rotation: body.rotation_deg,
  block: body.block ?? '',
  pins: body.pins,
});
