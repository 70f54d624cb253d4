import { describe, expect, it } from 'vitest';
import { did } from '../testing/bench-of.ts';
import { boardReads, DARK, lampBoards, lampFile, lampModel, LAMP_MODEL, look, read, type Steps } from '../testing/lamp-board.ts';

const believed = ({ belief }: ReturnType<typeof lampFile>): string =>
  belief.hypotheses[0]!.faults.map(({ id }) => id)
    .sort()
    .join(' ');
const chanceOf = ({ belief }: ReturnType<typeof lampFile>, id: string): number =>
  belief.hypotheses
    .filter(({ faults, alike }) => [...faults, ...alike].some((fault) => fault.id === id))
    .reduce((sum, { chance }) => sum + chance, 0);

const chanceOfBlock = ({ belief }: ReturnType<typeof lampFile>, block: string): number =>
  belief.blocks.find(({ id }) => id === block)!.chance;
const NEVER = { knowledge: () => null };

/** Follows the advice on a lamp with such a fault until it says to work on it. */
function followed(fault: string): { file: ReturnType<typeof lampFile>; steps: Steps } {
  const steps = [...DARK];
  for (let i = 0; i < 12; i++) {
    const file = lampFile(steps);
    const { check } = file.advice;
    if (!check) return { file, steps };
    if (check.kind === 'measure') steps.push(read(check.target, boardReads(check.target, fault), check.mode!));
    else if (check.kind === 'look') steps.push(look(check.target, 'nothing-wrong'));
    else
      steps.push([
        'trial-done',
        { item_id: 'u1', function: check.target, outcome: check.target === 'closes' ? 'works' : 'fails', with: check.with },
      ]);
  }
  throw new Error('it asks on and on');
}

describe('advice with a circuit', () => {
  it.each([
    ['f1:open', 'new-fuse'],
    ['r1:open', 'replace.R1'],
    ['q1:dead', 'replace.Q1'],
    ['r3:open', 'replace.R3'],
  ])('finds %s by following its own checks, and does %s', (fault, remedy) => {
    const { file } = followed(fault);
    expect(chanceOf(file, fault)).toBeGreaterThan(0.4);
    expect(file.advice).toMatchObject({ do: 'remedy', id: `remedy.${remedy}` });
  });

  it('shows capacitors on one rail as one group, with the remedy that serves both', () => {
    const { file } = followed('c1:short');
    const group = file.belief.groups.find(({ faults }) => faults.some(({ id }) => id === 'c1:short'))!;
    expect(group.faults.map(({ id }) => id)).toEqual(expect.arrayContaining(['c1:short', 'c2:short']));
    expect(group.remedy).toEqual({ id: 'trace.v33', name: 'Find what pulls V33 to ground, and replace it' });
    expect(file.belief.hypotheses[0]!.alike.length).toBeGreaterThan(0);
    const trace = [file.advice.remedy!, ...file.advice.other_remedies].find(({ id }) => id === 'trace.v33')!;
    expect(trace.cautions).toEqual(expect.arrayContaining(['lithium-cell', 'hot-tool', 'fumes']));
    expect(trace.spots.map(({ ref }) => ref)).toEqual(expect.arrayContaining(['C1', 'C2']));
  });

  it('says where the leads go, what to set, and what each range would lead to', () => {
    const { advice } = lampFile(DARK);
    const check = [advice.check!, ...advice.other_checks].find(({ target }) => target === 'v33.volts')!;
    expect(check.probe).toMatchObject({
      point: 'v33.volts',
      red: { net: 'v33', name: 'V33' },
      black: { net: '0', name: 'ground' },
      power: { name: 'On its cell' },
    });
    expect(check.probe!.red!.pads[0]).toEqual({ ref: 'TP1', pin: 1, x_mm: 30, y_mm: 15, side: 'front' });
    expect(check.probe!.set).toEqual(['Set the power: on its cell.']);
    expect(check.how).toContain('Red on TP1 pin 1 (V33), black on');
    const dead = check.outcomes.find(({ range }) => range!.from === null && range!.to !== null && range!.to < 1)!;
    expect(dead.outcome).toMatch(/^below .* V$/);
    expect(check.outcomes.some(({ leads_to }) => leads_to !== 'look further')).toBe(true);
    expect(check.reference).toMatch(/^3\.\d+ V ± .* by its circuit$/);
  });

  it('asks next for what is cheap from where the bench stands', () => {
    const { advice } = lampFile([...DARK, read('vsys.volts', boardReads('vsys.volts', 'r1:open'))]);
    const volts = [advice.check!, ...advice.other_checks].filter(({ probe, mode }) => probe && mode === 'volts');
    expect(volts.flatMap(({ probe }) => probe!.set)).toEqual([]);
  });

  it('names a reading that disagrees, and asks to take it once more', () => {
    const good = ['vsys.volts', 'v33.volts', 'mid.volts', 'base.volts'].map((point) => read(point, boardReads(point, null)));
    const { belief } = lampFile([...DARK, ...good, read('V33', 1.1)]);
    expect(belief.repeat).toMatchObject({ point: 'V33', mode: 'volts' });
    expect(belief.repeat!.text).toMatch(/^The reading at V33 at TP1 \(1\.1 V\) disagrees with the rest/);
  });

  it('says what moved the belief last, and shows each reading beside what the circuit expects', () => {
    const file = lampFile([...DARK, read('v33.volts', boardReads('v33.volts', 'f1:open'))]);
    expect(file.belief.moved!.text).toContain('The reading at V33');
    expect(file.belief.moved!.faults.find(({ id }) => id === 'f1:open')!.chance).toBeGreaterThan(0.3);
    expect(file.readings[0]).toMatchObject({ point: 'v33.volts', expected: expect.stringMatching(/^3\.\d+ V ± /) });
    expect(file.readings[0]!.sigmas).toBeLessThan(-20);
  });

  it('says how much of the boards is known, and is of use before all is', () => {
    const boards = lampBoards(LAMP_MODEL, 30);
    const file = lampFile([...DARK, read('v33.volts', 0.001)], { boards });
    expect(file.belief.knowledge).toEqual({ done: 30, rows: boards.knowledge(LAMP_MODEL, [])!.rows });
    expect(file.advice.headline.length).toBeGreaterThan(0);
  });
});

describe('a part that is missing', () => {
  const gone: Steps = [...DARK, look('R4', 'missing')];

  it('is believed from one finding at its place, and fitted', () => {
    const file = lampFile(gone);
    expect(chanceOfBlock(file, 'driver')).toBeGreaterThan(0.9);
    expect(file.belief.hypotheses[0]!.faults[0]!.refs).toEqual(['R4']);
    expect([file.advice.id, ...file.advice.other_remedies.map(({ id }) => id)].join()).toContain('replace.R4');
  });

  it('changes what readings are expected: a lamp that is dark at its anode is then no fault more', () => {
    const dark = read('lamp_a.volts', boardReads('lamp_a.volts', 'r4:missing'));
    const file = lampFile([...gone, dark, read('v33.volts', boardReads('v33.volts', null))]);
    expect(believed(file)).toMatch(/^r4:(missing|open)$/);
    expect(file.belief.odd).toEqual([]);
  });

  it('does not hide a second fault', () => {
    const file = lampFile([
      ...gone,
      read('v33.volts', boardReads('v33.volts', 'u1:dead')),
      read('vsys.volts', boardReads('vsys.volts', null)),
    ]);
    expect(file.belief.hypotheses[0]!.faults.map(({ id }) => id)).toContain('r4:missing');
    expect(file.belief.hypotheses[0]!.faults.length).toBe(2);
    expect(chanceOfBlock(file, 'driver')).toBeGreaterThan(0.9);
    expect(chanceOfBlock(file, 'regulator')).toBeGreaterThan(0.9);
  });

  it('is at its block where no circuit is known', () => {
    const file = lampFile(gone, { boards: NEVER });
    expect(file.belief.hypotheses.some(({ faults }) => faults.some(({ id }) => id.includes(':')))).toBe(false);
    expect(file.belief.knowledge).toBeNull();
  });
});

describe('work on a part', () => {
  const found: Steps = [...DARK, ...['v33.volts', 'mid.volts', 'base.volts'].map((point) => read(point, boardReads(point, 'r1:open')))];

  it('with a good reading after it clears the fault', () => {
    expect(chanceOf(lampFile(found), 'r1:open')).toBeGreaterThan(0.4);
    const after = lampFile([...found, did('u1', 'replace.R1', 'not-tried-yet'), read('mid.volts', boardReads('mid.volts', null))]);
    expect(chanceOf(after, 'r1:open')).toBeLessThan(0.03);
  });

  it('with the same reading after it leaves the fault in doubt', () => {
    const after = lampFile([...found, did('u1', 'replace.R1', 'not-mended'), read('mid.volts', boardReads('mid.volts', 'r1:open'))]);
    expect(after.belief.none).toBeLessThan(0.02);
  });

  it('is not offered for a part that the file knows to die and has no remedy for', () => {
    const { file } = followed('u1:dead');
    expect(chanceOf(file, 'u1:dead')).toBeGreaterThan(0.4);
    expect([file.advice.id, ...file.advice.other_remedies.map(({ id }) => id)].join()).not.toContain('replace.U1');
  });

  it('is not offered for a part that the file has a remedy for', () => {
    const { advice } = followed('f1:open').file;
    expect([advice.id, ...advice.other_remedies.map(({ id }) => id)]).not.toContain('replace.F1');
  });
});

describe('good boards that were measured', () => {
  it('go before what the circuit says', () => {
    const readings = [1, 2, 3, 4, 5, 6].map((board) => ({
      board: `good-${board}`,
      point: 'V33',
      mode: 'volts' as const,
      value: 3.1 + board / 1e3,
    }));
    const measured = lampModel(readings);
    const steps: Steps = [...DARK, read('V33', 3.1)];
    const known = lampFile(steps, { model: measured, boards: lampBoards(measured) });
    const unknown = lampFile(steps);
    expect(known.readings[0]!.reference).toContain('on 6 good boards');
    const regulator = (file: typeof known) => file.belief.blocks.find(({ id }) => id === 'regulator')!.chance;
    expect(regulator(known)).toBeLessThan(0.8 * regulator(unknown));
  });
});

describe('without a circuit', () => {
  it('the answers are those of the model file', () => {
    const { circuit: _, ...plain } = LAMP_MODEL;
    const steps: Steps = [...DARK, read('V33', 0)];
    expect(lampFile(steps, { boards: NEVER })).toEqual(lampFile(steps, { model: plain, boards: NEVER }));
    expect(lampFile(steps, { boards: NEVER }).belief.hypotheses.some(({ faults }) => faults.some(({ id }) => id.includes(':')))).toBe(
      false,
    );
  });
});
