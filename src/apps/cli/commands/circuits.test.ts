import { describe, expect, it } from 'vitest';
import { lampModel } from '../../../bench/advice/testing/lamp-board.ts';
import type { BoardProgress, BoardShelf } from '../../../bench/boards/index.ts';
import type { Model } from '../../../bench/models/index.ts';
import { openBench } from '../../../bench/open-bench.ts';
import { memoryStore } from '../../../bench/testing/memory-store.ts';
import { smallModels } from '../../../bench/testing/small-model.ts';
import { runCli } from '../run-cli.ts';
import { commandLine } from '../testing/command-line.ts';

const lamp = lampModel();
const models: ReadonlyMap<string, Model> = new Map([...smallModels(), [lamp.file.id, lamp]]);

/** A shelf that is done after two rows where it may compute, and stands still where it may not. */
function shelf(compute: boolean): BoardShelf {
  const watchers = new Set<() => void>();
  let now: BoardProgress = { modelId: lamp.file.id, confirmed: [], done: 0, rows: 2, stage: compute ? 'waiting' : 'stopped' };
  const step = (next: Partial<BoardProgress>): void => {
    now = { ...now, ...next };
    for (const tell of watchers) tell();
  };
  return {
    knowledge: () => null,
    progress: () => [now],
    settled: async (model) => {
      if (!model.circuit) return null;
      if (compute) for (const done of [1, 2]) step({ done, stage: done === 2 ? 'ready' : 'computing' });
      return now;
    },
    watch: (tell) => {
      watchers.add(tell);
      return () => void watchers.delete(tell);
    },
    stop: () => undefined,
    go: () => undefined,
    close: async () => undefined,
  };
}

async function salvor(...argv: string[]): Promise<{ code: number; out: string[]; err: string[] }> {
  const { parts } = commandLine();
  const [out, err]: [string[], string[]] = [[], []];
  const open: typeof parts.open = async (home, compute) => {
    const boards = shelf(compute);
    const bench = openBench({ store: memoryStore(), models, boards, clock: parts.clock, device: 'bench-1', version: '0' });
    return { ...(await parts.open(home, compute)), bench, boards };
  };
  const code = await runCli(argv, { ...parts, open, out: (text) => void out.push(text), err: (text) => void err.push(text) });
  return { code, out, err };
}

describe('salvor circuits', () => {
  it('computes what has a circuit, tells on the error stream how far it is, and says what is ready', async () => {
    const { code, out, err } = await salvor('circuits');
    expect([code, out, err]).toEqual([0, [`${lamp.file.name}: 2 boards, ready`], [`${lamp.file.name}: 1 of 2 boards`]]);
  });

  it('answers as JSON', async () => {
    const { out } = await salvor('circuits', lamp.file.id, '--json');
    expect(JSON.parse(out.join(''))).toEqual({ circuits: [{ model_id: lamp.file.id, stage: 'ready', rows: 2 }] });
  });

  it('says what a model without a circuit lacks, and which name it does not know', async () => {
    const [plain] = smallModels().keys();
    expect((await salvor('circuits', plain!)).out.join()).toMatch(/level 2/);
    const unknown = await salvor('circuits', 'no-such-model');
    expect(unknown.code).toBe(2);
    expect(unknown.err.join()).toMatch(/no-such-model/);
  });
});
