import { describe, expect, it } from 'vitest';
import { lampModel } from '../../../bench/advice/testing/lamp-board.ts';
import type { Model } from '../../../bench/models/index.ts';
import { openBench } from '../../../bench/open-bench.ts';
import { memoryStore } from '../../../bench/testing/memory-store.ts';
import { smallModels } from '../../../bench/testing/small-model.ts';
import { runCli } from '../run-cli.ts';
import { commandLine } from '../testing/command-line.ts';

const lamp = lampModel();
const POWER = 'power\nXBT1 vbat 0 BATTERY v=3.9\nRF1 vbat v33 0.05\nR1 v33 0 10k\n';
const PLACES = 'Designator;Mid X (mil);Mid Y (mil);Layer;Footprint\nR1;100;200;top;R0603\nR2;300;200;top;R0603\n';

/** A command line over one bench with a lamp that has a circuit, and a copy of it that grows. */
async function bench() {
  const { parts, files } = commandLine();
  const models: ReadonlyMap<string, Model> = new Map([...smallModels(), [lamp.file.id, lamp]]);
  const store = memoryStore();
  const opened = openBench({ store, models, clock: parts.clock, device: 'bench-1', version: '0' });
  const open: typeof parts.open = async (home, compute) => ({ ...(await parts.open(home, compute)), bench: opened });
  const begun = { model_id: 'lamp-g', name: 'Grown lamp', currency: 'GBP', from: { copy_of: 'lamp-1' } };
  expect(opened.record([{ kind: 'model-begun', body: begun }])).toMatchObject({ ok: true });
  files.set('power.cir', Buffer.from(POWER));
  files.set('places.csv', Buffer.from(PLACES));
  const salvor = async (...argv: string[]) => {
    const [out, err]: [string[], string[]] = [[], []];
    const code = await runCli(argv, { ...parts, open, out: (text) => void out.push(text), err: (text) => void err.push(text) });
    return { code, text: [...out, ...err].join('\n') };
  };
  return { salvor, opened, files };
}

describe('salvor model', () => {
  it('check says what a model can do, and that its netlist predicts its good boards', async () => {
    const { salvor } = await bench();
    const { code, text } = await salvor('model', 'check', lamp.file.id);
    expect(code).toBe(0);
    expect(text).toContain(`level ${lamp.file.level}`);
    expect((await salvor('model', 'check', 'nothing')).text).toContain('No model is called "nothing"');
    expect((await salvor('model', 'check', lamp.file.id, '--seconds', '0')).code).toBe(2);
  });

  it('netlist takes a power tree over into a model that grows, and writes it out with its unknown loads', async () => {
    const { salvor, files } = await bench();
    expect((await salvor('model', 'netlist', 'lamp-g', '--take', 'power.cir')).code).toBe(0);
    expect((await salvor('model', 'check', 'lamp-g')).text).toContain('Something that is not drawn hangs on V33 (3.3 V)');
    expect((await salvor('model', 'netlist', 'lamp-g', '--out', 'out.cir')).code).toBe(0);
    expect(Buffer.from(files.get('out.cir')!).toString()).toContain('RF1 vbat v33 0.05');
    const refused = await salvor('model', 'netlist', 'lamp-1', '--take', 'power.cir');
    expect(refused.text).toContain('does not grow here');
    expect((await salvor('model', 'netlist', 'lamp-1')).text).toContain('has no netlist');
  });

  it('placement guesses the columns, lets them be corrected, and takes the parts over only when asked', async () => {
    const { salvor, opened } = await bench();
    await salvor('model', 'netlist', 'lamp-g', '--take', 'power.cir');
    const guess = await salvor('model', 'placement', 'lamp-g', 'places.csv');
    expect(guess.text).toContain('Columns ref=1, x=2, y=3, side=4, package=5; lengths in mil; 1 rows of header.');
    expect(guess.text).toContain('R2 is in the placement and not in the netlist.');
    expect(guess.text).toContain('nothing is taken over without --take');
    expect(opened.state().grown.get('lamp-g')!.parts.size).toBe(0);
    await salvor('model', 'placement', 'lamp-g', 'places.csv', '--columns', 'x=3,y=2', '--take');
    expect(opened.state().grown.get('lamp-g')!.parts.get('R1')).toMatchObject({ kind: 'resistor', x_mm: 5.08, y_mm: 2.54 });
    expect((await salvor('model', 'placement', 'lamp-g', 'places.csv', '--columns', 'where=1')).code).toBe(2);
  });
});
