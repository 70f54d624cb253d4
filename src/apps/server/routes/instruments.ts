import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import { MeterMode } from '../../../bench/events/index.ts';
import { problemOfInstrument } from '../../../bench/words.ts';
import type { AppParts } from '../app-parts.ts';
import { Refused } from '../refused.ts';
import { answers, jsonBody, refusals } from '../responses.ts';

const Question = z
  .object({
    address: z
      .string()
      .min(1, 'must not be empty')
      .max(300)
      .meta({ description: 'Name or IP address, with a port where it is not 5025', example: '192.0.2.7' }),
    mode: MeterMode,
  })
  .meta({ id: 'InstrumentQuestion' });

const Reading = z
  .object({
    value: z.number().nullable().meta({ description: 'In V, Ω or A; null when it shows overload' }),
    unit: z.enum(['V', 'Ω', 'A']),
    instrument: z.string().meta({ description: 'What it says of itself' }),
  })
  .meta({ id: 'InstrumentReading' });

const readRoute = createRoute({
  method: 'post',
  path: '/api/instruments/reading',
  summary: 'One reading of a meter or supply that speaks SCPI over TCP; nothing is stored, and no output is switched',
  request: { body: jsonBody(Question) },
  responses: {
    ...answers(Reading, 'What it shows'),
    ...refusals('bad-input', 'bad-json', 'body-too-large', 'unsupported-media-type', 'no-reading'),
  },
});

/** Readings straight from instruments, at addresses that the person types in. */
export const instrumentRoutes = ({ instruments }: AppParts) =>
  new OpenAPIHono().openapi(readRoute, async (c) => {
    const { address, mode } = c.req.valid('json');
    const answer = await instruments.read(address, mode);
    if (!answer.ok) throw new Refused(answer.code === 'bad-address' ? 400 : 502, problemOfInstrument(answer, address));
    const { value, unit, instrument } = answer;
    return c.json({ value, unit, instrument }, 200);
  });
