import { BODIES, type BenchEvent, type Kind, type Stored } from '../events/index.ts';
import type { z } from 'zod';

/** A body as a person would write it: what has a default may be left out. */
export type BodyInput<K extends Kind> = z.input<(typeof BODIES)[K]>;

/** The UUID (version 7 in form) of the nth event of a test. */
export const testId = (n: number): string => `019f0000-0000-7000-8000-${String(n).padStart(12, '0')}`;

/** An event of a test, valid by its schema: the nth of its log, on day `n` of 2026 counted in hours. */
export function testEvent<K extends Kind>(n: number, kind: K, body: BodyInput<K>, device = 'bench-1'): BenchEvent {
  const at = new Date(Date.UTC(2026, 0, 1, n)).toISOString();
  return { id: testId(n), at, device, version: 1, kind, body: BODIES[kind].parse(body) } as BenchEvent;
}

/** One event of a test log, as short as it can be written. */
export type Step = readonly [kind: Kind, body: unknown, device?: string];

/** A log of events given as kind and body, numbered from 1. */
export function testLog(...steps: readonly Step[]): Stored[] {
  return steps.map(([kind, body, device], index) => ({ seq: index + 1, event: testEvent(index + 1, kind, body as never, device) }));
}

/** One lamp for 20.00 with 4.00 postage, received. */
export const oneLamp = [
  [
    'lot-bought',
    {
      lot_id: 'lot-1',
      title: 'a faulty lamp',
      seller: 'marsh-lane',
      price_minor: 2000,
      postage_minor: 400,
      currency: 'GBP',
      items: [{ item_id: 'lamp-a', name: 'Lamp A', model_id: 'lamp-1', expected_value_minor: 3000 }],
    },
  ],
  ['item-received', { item_id: 'lamp-a' }],
] as const;
