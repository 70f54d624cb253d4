import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { claimsThatCount, correctedReading, keyOfReading, readListing, type ReadableModel } from './index.ts';

const MODEL: ReadableModel = {
  functions: [
    { id: 'starts', name: 'Starts' },
    { id: 'picture', name: 'Picture' },
    { id: 'sound', name: 'Sound' },
    { id: 'keys', name: 'Keys' },
  ],
  blocks: [
    { id: 'shell', name: 'Shell' },
    { id: 'speaker', name: 'Speaker' },
    { id: 'charger', name: 'Charger that came with it' },
    { id: 'contrast', name: 'Contrast wheel RV2' },
  ],
};
const says = (text: string, taught: Parameters<typeof readListing>[2] = []) =>
  readListing(text, MODEL, taught).claims.map(({ claim, words, rule, unit }) => ({ claim, words, rule, unit }));
const fn = (id: string, outcome: string) => ({ about: 'function', function: id, says: outcome });

describe('a text read into claims', () => {
  it('gives each claim with its words and the rule that read it', () => {
    expect(says('Turns on, but the speaker is dead.')).toEqual([
      { claim: fn('starts', 'works'), words: 'Turns on', rule: 'turns on', unit: null },
      { claim: fn('sound', 'fails'), words: 'speaker is dead', rule: 'dead', unit: null },
    ]);
  });

  it('is turned round by "not", and twice by two of them', () => {
    expect(says('It is not silent.')[0]).toMatchObject({ claim: fn('sound', 'works') });
    expect(says('The sound is not dead.')[0]).toMatchObject({ claim: fn('sound', 'works'), rule: 'dead, not' });
    expect(says('Neither picture nor sound.').map(({ claim }) => claim)).toEqual([fn('picture', 'fails'), fn('sound', 'fails')]);
  });

  it('knows what a model calls its own blocks', () => {
    expect(says('The contrast wheel is loose.')).toEqual([
      { claim: { about: 'place', place: 'contrast', sees: 'loose' }, words: 'contrast wheel is loose', rule: 'loose', unit: null },
    ]);
  });

  it('remarks what the model does not have, what is denied, and conditions, and makes no claims of them', () => {
    const { claims, remarks } = readListing('No cracks. The belt is worn. If it does not start, no refunds.', MODEL);
    expect(claims).toEqual([]);
    expect(remarks.map(({ code, words }) => [code, words])).toEqual([
      ['denied', 'cracks'],
      ['not-in-model', 'belt is worn'],
      ['condition', 'If'],
      ['condition', 'refunds'],
    ]);
  });

  it('lets doubtful praise and contradicted praise not count, but the fault', () => {
    const { claims } = readListing('Sound should work. The picture is clear. Screen stays blank.', MODEL);
    expect(claims.map(({ claim, hedged, contradicted, counts }) => [claim, hedged, contradicted, counts])).toEqual([
      [fn('sound', 'works'), true, false, false],
      [fn('picture', 'works'), false, true, false],
      [fn('picture', 'fails'), false, true, true],
    ]);
  });

  it('keeps apart what is said of each unit of a lot', () => {
    const reading = readListing('Lot of two. Both turn on. The first is silent, the second has a cracked shell.', MODEL);
    expect(reading.units).toBe(2);
    expect(claimsThatCount(reading, 1)).toEqual([fn('starts', 'works'), fn('sound', 'fails')]);
    expect(claimsThatCount(reading, 2)).toEqual([fn('starts', 'works'), { about: 'place', place: 'shell', sees: 'cracked' }]);
    expect(claimsThatCount(reading, null)).toEqual([fn('starts', 'works')]);
  });
});

describe('words that the person taught', () => {
  const taught = [{ words: 'does the hum', claim: { about: 'function', function: 'sound', says: 'comes-and-goes' } as const }];

  it('are read before the built-in ones, with negation', () => {
    expect(says('It does the hum.', taught)).toEqual([
      { claim: fn('sound', 'comes-and-goes'), words: 'does the hum', rule: 'taught: does the hum', unit: null },
    ]);
    expect(says('It never does the hum.', taught)[0]).toMatchObject({ claim: fn('sound', 'works') });
    expect(says('It does the hum.')).toEqual([]);
  });
});

describe('the word of the person', () => {
  const reading = readListing('The speaker is dead.', MODEL);
  const key = keyOfReading(reading.claims[0]!);

  it('goes over what was read', () => {
    expect(claimsThatCount(correctedReading(reading, [{ does: 'count', key, counts: false }]), null)).toEqual([]);
    const claim = { about: 'function', function: 'keys', says: 'fails' } as const;
    expect(claimsThatCount(correctedReading(reading, [{ does: 'change', key, claim }]), null)).toEqual([claim]);
    expect(claimsThatCount(correctedReading(reading, [{ does: 'add', claim, unit: null }]), null)).toHaveLength(2);
  });

  it('is one claim when it only repeats what was read', () => {
    const again = correctedReading(reading, [{ does: 'add', claim: reading.claims[0]!.claim, unit: null }]);
    expect(claimsThatCount(again, null)).toHaveLength(1);
  });
});

describe('any text', () => {
  const pieces = fc.constantFrom(
    ...'it the speaker screen is not works dead silent no charger cracked shell , . ; ? but and if should one first second both untested as 1) 2) : everything except'.split(
      ' ',
    ),
  );
  const texts = fc.oneof(
    fc.string({ maxLength: 80, unit: 'binary' }),
    fc.array(pieces, { maxLength: 25 }).map((words) => words.join(' ')),
  );

  it('is read without failing, each claim from words that stand in it and in the words of the model', () => {
    fc.assert(
      fc.property(texts, (text) => {
        for (const { claim, span, words } of readListing(text, MODEL).claims) {
          expect(words).not.toBe('');
          expect(text.slice(span.from, span.to)).toBe(words);
          if (claim.about === 'function') expect(MODEL.functions.map(({ id }) => id)).toContain(claim.function);
          if (claim.about === 'place') expect(MODEL.blocks.map(({ id }) => id)).toContain(claim.place);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('reads the same in capitals', () => {
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 25 }), (words) => {
        const text = words.join(' ');
        const claims = (of: string) => readListing(of, MODEL).claims.map(({ claim, unit }) => [claim, unit]);
        expect(claims(text.toUpperCase())).toEqual(claims(text));
      }),
    );
  });

  it('counts at most one of "works" and "fails" for a function of a unit', () => {
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 25 }), (words) => {
        const reading = readListing(words.join(' '), MODEL);
        const outcomes = claimsThatCount(reading, 1).flatMap((claim) => (claim.about === 'function' ? [`${claim.function}`] : []));
        const praised = claimsThatCount(reading, 1).filter((claim) => claim.about === 'function' && claim.says === 'works');
        for (const claim of praised) if (claim.about === 'function') expect(outcomes.filter((id) => id === claim.function)).toHaveLength(1);
      }),
    );
  });
});
