import { beforeEach, describe, expect, it } from 'vitest';
import { commandLine } from '../testing/command-line.ts';

let line: ReturnType<typeof commandLine>;
beforeEach(async () => {
  line = commandLine();
  await line.salvor('add', 'lot', '--title', 'A lamp', '--seller', 'Harbour Clearance', '--price', '24', '--items', 'Blue:lamp-1:20');
  line.files.set('charge.csv', Buffer.from(`t;U;I\n${charged()}`));
});

/** Steady, then held while it falls, then ended. */
const charged = (): string =>
  Array.from({ length: 170 }, (_, i) => {
    const held = Math.max(0, 30 * i - 3000);
    const amps = held === 0 ? 1 : held < 1800 ? Math.exp(-held / 650) : 0;
    return [30 * i, held === 0 ? 3.1 + (1.1 * i) / 100 : 4.2, amps].map((value) => value.toFixed(3).replace('.', ',')).join(';');
  }).join('\n');

describe('a log of a charge by command', () => {
  it('says how it was read, and asks for the kind of cell', async () => {
    const asked = await line.salvor('charge-log', 'charge.csv');
    expect([asked.code, asked.err]).toEqual([2, expect.stringContaining('Say which kind of cell it is')]);
    const { code, out } = await line.salvor('charge-log', 'charge.csv', '--chemistry', 'li-ion-4.20', '--printed-mah', '1000');
    expect(code).toBe(0);
    expect(out).toContain('Cells are parted by semicolons, decimals by a comma; one row before the numbers');
    expect(out).toMatch(/Charger good: .*\nCell good: /);
    expect(out).toContain('Phases: constant current 51 min, constant voltage 29 min');
  });

  it('is noted with a unit where one is named', async () => {
    const { out } = await line.salvor('charge-log', 'charge.csv', '--chemistry', 'li-ion-4.20', '--item', '1');
    expect(out).toContain('Noted with 1.');
    const file = JSON.parse((await line.salvor('show', '1', '--json')).out) as { tests: { test: string; verdict: string }[] };
    expect(file.tests).toMatchObject([{ test: 'charge-log', verdict: 'good' }]);
  });

  it('takes columns as they are said, and refuses what says none', async () => {
    const swapped = await line.salvor('charge-log', 'charge.csv', '--columns', 'time=1,volts=3,amps=2', '--chemistry', 'li-ion-4.20');
    expect([swapped.code, swapped.err]).toEqual([2, expect.stringContaining('the wrong way round')]);
    expect((await line.salvor('charge-log', 'charge.csv', '--columns', 'volts')).code).toBe(2);
    expect((await line.salvor('charge-log', 'charge.csv', '--chemistry', 'lead')).err).toContain('"lead" is not known');
    expect((await line.salvor('charge-log', 'nothing.csv')).err).toContain('nothing.csv');
  });
});

describe('a log of heat by command', () => {
  it('shows each limit, and asks for the solder', async () => {
    const heat = Array.from({ length: 200 }, (_, i) => `${2 * i},${Math.min(270, 25 + 1.6 * i)}`).join('\n');
    line.files.set('heat.csv', Buffer.from(`s,°C\n${heat}`));
    expect((await line.salvor('heat-log', 'heat.csv')).err).toContain('Say which solder');
    const { code, out } = await line.salvor('heat-log', 'heat.csv', '--alloy', 'SAC305');
    expect(code).toBe(0);
    expect(out).toContain('Hottest, against what the part bears: 270 °C, at most 260 °C: missed.');
    expect((await line.salvor('heat-log', 'heat.csv', '--alloy', 'SAC305', '--peak', '275')).out).toContain(
      '270 °C, at most 275 °C: passed.',
    );
  });
});
