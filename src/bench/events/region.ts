import { z } from 'zod';

const Coordinate = z.number().min(-1000, 'must be a place in mm').max(1000, 'must be a place in mm');

/** An area of a board, as a person draws it around what they see. */
export const Region = z
  .object({
    side: z.enum(['front', 'back']),
    polygon: z
      .array(z.tuple([Coordinate, Coordinate]))
      .min(3, 'needs three corners or more')
      .max(60, 'must have at most 60 corners'),
  })
  .meta({ id: 'Region', description: 'Area of the board: its side, and corners in mm from the lower left corner of the front' });
export type Region = z.infer<typeof Region>;

/** Size of the rectangle about a region, mm. */
export function regionSize({ polygon }: Region): { readonly w: number; readonly h: number } {
  const span = (values: readonly number[]): number => Math.round((Math.max(...values) - Math.min(...values)) * 10) / 10;
  return { w: span(polygon.map(([x]) => x)), h: span(polygon.map(([, y]) => y)) };
}

/** Area of a region in mm², whichever way round its corners run (the shoelace formula; Meister 1769, from memory). */
export function regionArea({ polygon }: Region): number {
  const twice = polygon.reduce((sum, [x1, y1], i) => {
    const [x2, y2] = polygon[(i + 1) % polygon.length]!;
    return sum + x1 * y2 - x2 * y1;
  }, 0);
  return Math.abs(twice) / 2;
}
