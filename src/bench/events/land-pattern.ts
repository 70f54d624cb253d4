import { z } from 'zod';
import { Line } from './words.ts';

const Place = z.number().min(-1000, 'must be a place in mm').max(1000, 'must be a place in mm');
const Size = z.number().min(0.01, 'must be at least 0.01 mm').max(1000, 'must be a size in mm');

const Pad = z
  .object({
    pin: z.string().max(40).default('').meta({ description: 'Pin; empty for a peg, and for copper of no pin' }),
    x_mm: Place,
    y_mm: Place.meta({ description: 'Upwards' }),
    w_mm: Size,
    h_mm: Size,
    kind: z.enum(['surface', 'through', 'peg']).default('surface'),
    shape: z.enum(['rect', 'round-rect', 'oval', 'circle', 'outline']).default('rect'),
    turn_deg: z.number().min(-360).max(360).default(0).meta({ description: 'Against the clock' }),
    corner_mm: z.number().min(0).max(1000).default(0),
    drill: z.object({ w_mm: Size, h_mm: Size, dx_mm: Place.default(0), dy_mm: Place.default(0) }).optional(),
    rings: z
      .array(z.array(z.tuple([Place, Place])).max(2000))
      .max(50)
      .optional()
      .meta({ description: 'For an outline: its rings about the middle of the pad, mm' }),
    side: z.enum(['front', 'back']).default('front'),
    net: Line.optional(),
  })
  .refine(({ shape, rings }) => shape !== 'outline' || rings?.some((ring) => ring.length >= 3), {
    path: ['rings'],
    error: 'must hold the corners of an outline',
  });

/** The terminals of a part, or the pads of a place on a board, as they are kept in the log and asked for over the interface. */
export const LandPattern = z
  .object({
    name: Line,
    kind: z
      .enum(['chip', 'gull-wing', 'j-lead', 'no-lead', 'legs', 'wire-legs', 'connector', 'ribbon-socket', 'other'])
      .default('other')
      .meta({ description: 'Decides how far terminals bend, which fillets are wanted, and what is asked' }),
    basis: z.enum(['lands', 'feet']).default('lands').meta({ description: 'Pads that are soldered to, or the terminals themselves' }),
    numbered: z.boolean().default(true).meta({ description: 'False where the names of pads are not those of pins' }),
    height_mm: Size.optional().meta({ description: 'Of a part; of a place the room above it' }),
    mouth: z
      .object({ faces_deg: z.number().min(-360).max(360), reach_mm: Place.optional() })
      .optional()
      .meta({ description: 'Where it is plugged in: the way it faces, 0 along x and against the clock, and how far its edge is out' }),
    contacts: z.enum(['top', 'bottom', 'both']).optional().meta({ description: 'Of a ribbon socket: where it touches the ribbon' }),
    pads: z.array(Pad).min(1, 'needs a pad').max(2000, 'must have at most 2,000 pads'),
  })
  .meta({ id: 'LandPattern', description: 'Terminals of a part, or pads of a place: mm, y upwards, from the side of the part' });
export type LandPattern = z.output<typeof LandPattern>;
