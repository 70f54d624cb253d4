import { describe, expect, it } from 'vitest';
import { assertReckoning } from '../../core/rework/index.ts';
import { askedFields, CALCULATORS, reckonWith, reckoningText, type Outcome } from './index.ts';

const named = (id: string) => CALCULATORS.find((each) => each.id === id)!;
const reckon = (id: string, given: Readonly<Record<string, string>> = {}): Outcome => reckonWith(named(id), given);
const answers = (outcome: Outcome) => {
  if (!outcome.ok) throw new Error(outcome.message);
  return outcome.answers;
};
const texts = (id: string, given: Readonly<Record<string, string>> = {}): string[] =>
  answers(reckon(id, given)).map(({ label, reckoning, said }) => `${label}: ${said ?? reckoningText(reckoning)}`);

describe('every calculator', () => {
  it.each(CALCULATORS.map(({ id }) => id))('%s answers with all that is needed to judge it, as usual and by each choice', (id) => {
    const { fields } = named(id);
    const choices = fields.flatMap((field) => (field.kind === 'choice' ? field.options.map(({ value }) => ({ [field.id]: value })) : []));
    for (const given of [{}, ...choices.filter((each) => each.part !== 'size')])
      for (const { reckoning } of answers(reckon(id, given))) assertReckoning(reckoning);
  });

  it('refuses what is no number or beyond its reach, and names the field', () => {
    expect(reckon('wire', { current_a: 'much' })).toEqual({
      ok: false,
      field: 'current_a',
      message: 'Current, A must be a number above 0 to 1000.',
    });
    expect(reckon('wire', { length_mm: '0' })).toMatchObject({ ok: false, field: 'length_mm' });
    expect(reckon('track-current', { layer: 'beside' })).toMatchObject({ ok: false, field: 'layer' });
    expect(reckon('led', { supply_v: '1,5' })).toMatchObject({ ok: false, field: 'supply_v' });
  });

  it('asks only for what matters', () => {
    const asked = (given: Readonly<Record<string, string>>) => askedFields(named('resistance'), given).map(({ id }) => id);
    expect(asked({})).toContain('width_mm');
    expect(asked({ conductor: 'wire' })).not.toContain('width_mm');
    expect(asked({ conductor: 'wire' })).toContain('awg');
  });
});

describe('the wire for a net', () => {
  it('is thicker for more current, and says what kept a thinner one away', () => {
    expect(texts('wire', { current_a: '0.02', drop_mv: '200' })[0]).toContain('AWG 40');
    const strong = reckon('wire', { current_a: '2', length_mm: '100', drop_mv: '50' });
    expect(strong).toMatchObject({ ok: true, notes: [expect.stringContaining('6 A/mm²'), expect.any(String), expect.any(String)] });
    expect(reckon('wire', { current_a: '50', length_mm: '1000', drop_mv: '1' })).toMatchObject({ ok: false, field: 'drop_mv' });
  });
});

describe('the drop', () => {
  it('is the resistance times the current, twice there and back', () => {
    const [ohms, drop] = answers(reckon('resistance', { conductor: 'wire', current_a: '2', ways: '2' }));
    expect(drop!.reckoning.value).toBeCloseTo(4 * ohms!.reckoning.value, 12);
  });
});

describe('the mark on a part', () => {
  it('is read, twice where it can be', () => {
    expect(texts('part-code', { mark: '472' })).toEqual(['Read as three digits: 4.7 kΩ (4.46 kΩ to 4.93 kΩ)']);
    expect(texts('part-code', { mark: '12R' })).toHaveLength(2);
    expect(texts('part-code', { part: 'capacitor', mark: '104K' })).toEqual(['Read as three digits, pF: 100 nF (90 nF to 110 nF)']);
    expect(reckon('part-code', { mark: 'what' })).toMatchObject({ ok: false, field: 'mark' });
  });

  it('is asked which system it is in where a name of a size is in both', () => {
    const size = { part: 'size', mark: '0603' };
    expect(reckon('part-code', size)).toEqual({
      ok: false,
      field: 'system',
      message:
        '"0603" is the name of two chips: 1.6 × 0.8 mm counted in inches, 0.6 × 0.3 mm counted in mm. Measure one, and say which is meant.',
    });
    expect(texts('part-code', { ...size, system: 'metric' })[0]).toContain('Length: 0.6 mm');
  });
});

describe('the run time', () => {
  it('goes by current or by power', () => {
    expect(texts('run-time', { capacity_mah: '1000', current_ma: '100' })).toEqual(['It lasts: 9 h (7 h to 10 h)']);
    expect(texts('run-time', { draws: 'power', power_mw: '370', cell_v: '3.7', efficiency_percent: '100' })).toEqual([
      'It lasts: 9 h (7 h to 10 h)',
    ]);
  });
});
