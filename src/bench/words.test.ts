import { describe, expect, it } from 'vitest';
import { problemFor, problemOfPhoto, problemOfRefusal, problemOfTaking } from './words.ts';

describe('the sentence of a problem', () => {
  it('says what is wrong, where, and what to do next', () => {
    const problem = problemFor('no-such-item', { where: 'item', detail: '77' });
    expect(problem).toEqual({
      code: 'no-such-item',
      where: 'item',
      message: 'No item is called "77". Give its id or its stock number, such as 7; the list of items shows both.',
    });
  });

  it('puts a given name in as it is, even one that looks like a placeholder of a replacement', () => {
    expect(problemFor('no-such-item', { detail: "$&$'" }).message).toContain(`"$&$'"`);
  });

  const refusal = { ok: false, code: 'bad-event', index: 2, field: 'body.price_minor', message: 'must not be negative' } as const;

  it('names the event of a batch by its place, and the field alone when there is one', () => {
    expect(problemOfRefusal(refusal, 5)).toMatchObject({ where: 'events.2.body.price_minor' });
    expect(problemOfRefusal(refusal, 5).message).toMatch(/^In event 3 of 5, body.price_minor: must not be negative\. /);
    expect(problemOfRefusal({ ...refusal, index: 0 }).message).toMatch(/^In body.price_minor: must not be negative\. /);
  });

  it('names the picture that was not taken, and what to do with it', () => {
    const problem = problemOfPhoto({ ok: false, code: 'photo-corrupt', name: 'a.jpg', detail: 'it ends early' });
    expect(problem).toEqual({ code: 'photo-corrupt', where: 'a.jpg', message: expect.stringMatching(/^a\.jpg .*it ends early.*\.$/) });
  });

  it('tells why a bundle was not taken, whichever of its parts it was', () => {
    expect(problemOfTaking({ ok: false, code: 'not-empty', events: 12 }, 3).message).toContain('12 events');
    expect(problemOfTaking(refusal, 9).message).toContain('event 3 of 9');
    expect(problemOfTaking({ ok: false, code: 'photo-empty', name: 'b.png', detail: '' }, 9).where).toBe('b.png');
  });
});
