import { describe, expect, it } from 'vitest';
import { RULE_CODES } from './rules/index.ts';
import { problemFor, problemOfPhoto, problemOfRefusal, problemOfStore, problemOfTaking } from './words.ts';

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
  const ruled = {
    ok: false,
    code: 'unknown-bag',
    index: 0,
    field: 'body.bag_id',
    message: 'there is no bag "b"; there are none yet',
  } as const;

  it('names the field of an event, and its place in a batch', () => {
    const problem = problemOfRefusal(refusal, 5);
    expect(problem.where).toBe('events.2.body.price_minor');
    expect(problem.message).toBe(
      'The field body.price_minor does not fit: must not be negative. Mend it and send it again. This is event 3 of 5; none of them was stored.',
    );
    expect(problemOfRefusal({ ...refusal, index: 0 })).toMatchObject({
      where: 'body.price_minor',
      message: expect.stringMatching(/again\.$/),
    });
  });

  it('tells what a rule objects to in the words of the rule, and what to do next', () => {
    expect(problemOfRefusal(ruled).message).toBe('There is no bag "b"; there are none yet. Use one of these, or note the bag first.');
  });

  it('has the next step for every rule, in the words of the rule itself or after them', () => {
    for (const code of RULE_CODES)
      expect(problemOfRefusal({ ...ruled, code }).message).toMatch(/^There is no bag "b"; there are none yet\.( [A-Z].*\.)?$/);
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

  it('tells trouble of the store by its code, and leaves other errors alone', () => {
    const full = Object.assign(new Error('/b/salvor.sqlite cannot grow because the disk is full'), { code: 'store-full' });
    expect(problemOfStore(full)).toEqual({
      code: 'store-full',
      message: '/b/salvor.sqlite cannot grow because the disk is full. Make room on the disk, then try again.',
    });
    expect([
      problemOfStore(new Error('x')),
      problemOfStore(Object.assign(new Error('x'), { code: 'ENOENT' })),
      problemOfStore('x'),
    ]).toEqual([null, null, null]);
  });
});
