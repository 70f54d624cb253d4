import { describe, expect, it } from 'vitest';
import { parseEvent } from './event.ts';

const envelope = { id: '019f0000-0000-7000-8000-000000000001', at: '2026-05-01T09:00:00Z', device: 'desk' };
const nested = (depth: number): unknown => {
  let value: unknown = 1;
  for (let i = 0; i < depth; i++) value = [value];
  return value;
};

describe('an event of a newer version', () => {
  const newer = (body: unknown): unknown => ({ ...envelope, version: 99, kind: 'moon-phase', body });

  it('is taken as it comes, to a hundred levels', () => {
    expect(parseEvent(newer(nested(100)))).toMatchObject({ ok: true, event: { foreign: true } });
  });

  it('is refused when it is nested so deeply that keeping it would exhaust the stack', () => {
    for (const depth of [101, 200_000])
      expect(parseEvent(newer(nested(depth)))).toEqual({
        ok: false,
        code: 'bad-event',
        field: 'body',
        message: 'is nested more than 100 levels deep',
      });
  });
});
