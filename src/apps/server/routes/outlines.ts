import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import type { NamedOutline, PhotoOutlines } from '../../../bench/ports.ts';
import { OUTLINE_KINDS, type Patch, type Point } from '../../../core/vision/index.ts';
import type { AppParts } from '../app-parts.ts';
import { refuse } from '../refused.ts';
import { answers, jsonBody, refusals } from '../responses.ts';

const px = z.number().finite();
const Box = z
  .object({ left_px: px, top_px: px, right_px: px, bottom_px: px })
  .refine(({ left_px, right_px, top_px, bottom_px }) => right_px > left_px && bottom_px > top_px, 'must have a width and a height')
  .meta({ id: 'PhotoBox', description: 'A rectangle in px of the upright photo, from its upper left' });

const Question = z
  .object({
    px_per_mm: z.number().positive().max(1000).meta({ description: 'Scale of the photo, by two points of known distance' }),
    board: Box.optional(),
    least_chance: z
      .number()
      .min(0.02)
      .max(1)
      .optional()
      .meta({ description: 'Proposals less likely than this are left out; 0.5 where nothing is said' }),
    read_text: z
      .boolean()
      .default(false)
      .meta({ description: 'Whether print beside parts is read as their references; it takes some seconds more' }),
  })
  .meta({ id: 'OutlineQuestion' });

const place = z.tuple([z.number(), z.number()]);
const Outline = z
  .object({
    kind: z.enum(OUTLINE_KINDS),
    chance: z.number(),
    reference: z.string().nullable().meta({ description: 'What seems to be printed beside it, where that was read' }),
    outline_px: z.array(place).meta({ description: 'Corners clockwise from the upper left' }),
    outline_mm: z
      .array(place)
      .meta({ description: 'The same in mm from the lower left corner of the board as it is seen (of the photo without one), y up' }),
    rows_px: z.array(z.array(place)).meta({ description: 'Rows of pins in it, longest first: the middle of each pin' }),
  })
  .meta({ id: 'ProposedOutline' });
const Outlines = z.object({ outlines: z.array(Outline) }).meta({ id: 'ProposedOutlines' });

const route = createRoute({
  method: 'post',
  path: '/api/photos/{hash}/outlines',
  summary: 'Parts, rows of pins, test points and holes that a photo of a board seems to show, likeliest first; nothing is stored',
  request: {
    params: z.object({ hash: z.string().regex(/^[0-9a-f]{64}$/, 'must be the SHA-256 of a photo in hexadecimal') }),
    body: jsonBody(Question),
  },
  responses: {
    ...answers(Outlines, 'Proposals, for a person to accept, correct or wave away'),
    ...refusals(
      'bad-input',
      'bad-json',
      'body-too-large',
      'unsupported-media-type',
      'no-such-photo',
      'photo-too-coarse',
      'board-too-large',
      'no-outlines',
    ),
  },
});

type Question = z.infer<typeof Question>;

/** What a photo proposes for the picture of a board. */
export const outlineRoutes = ({ photos, outlines }: AppParts) =>
  new OpenAPIHono().openapi(route, async (c) => {
    if (!outlines) throw refuse('no-outlines');
    const { hash } = c.req.valid('param');
    const question = c.req.valid('json');
    const photo = await photos.get(hash, 'original');
    if (!photo) throw refuse('no-such-photo', { where: 'hash', detail: hash.slice(0, 12) });
    const board = question.board && patchOf(question.board);
    const search = outlines.propose(photo.bytes, {
      pxPerMm: question.px_per_mm,
      readsText: question.read_text,
      ...(board && { board }),
      ...(question.least_chance !== undefined && { leastChance: question.least_chance }),
    });
    c.req.raw.signal.addEventListener('abort', search.cancel);
    const found = await search.done;
    const note = (await photos.list()).find((each) => each.hash === hash);
    const corner: Point = board ? [board.left, board.bottom] : [0, note?.heightPx ?? 0];
    return c.json({ outlines: taken(found).map((outline) => shown(outline, corner, question.px_per_mm)) }, 200);
  });

const patchOf = ({ left_px, top_px, right_px, bottom_px }: NonNullable<Question['board']>): Patch => ({
  left: left_px,
  top: top_px,
  right: right_px,
  bottom: bottom_px,
});

function taken(found: PhotoOutlines): readonly NamedOutline[] {
  if (found.ok) return found.outlines;
  if (found.code === 'too-coarse')
    throw refuse('photo-too-coarse', { where: found.pxPerMm.toFixed(1), detail: String(found.neededPxPerMm) });
  if (found.code === 'too-large')
    throw refuse('board-too-large', {
      where: `${Math.round(found.widthMm)} × ${Math.round(found.heightMm)}`,
      detail: String(found.mostMm),
    });
  throw refuse('no-outlines', { detail: found.code });
}

function shown({ kind, chance, reference, outline, rows }: NamedOutline, [left, bottom]: Point, pxPerMm: number): z.infer<typeof Outline> {
  const tenths = ([x, y]: Point): [number, number] => [Math.round(x * 10) / 10, Math.round(y * 10) / 10];
  const mm = ([x, y]: Point): [number, number] => [hundredths((x - left) / pxPerMm), hundredths((bottom - y) / pxPerMm)];
  return {
    kind,
    chance: hundredths(chance),
    reference,
    outline_px: outline.map(tenths),
    outline_mm: outline.map(mm),
    rows_px: rows.map((row) => row.map(tenths)),
  };
}

const hundredths = (value: number): number => Math.round(value * 100) / 100;
