import type { Session } from './session.ts';

const UNDER_WORK = ['bought', 'on-the-bench', 'proved', 'listed'];

/**
 * Fetches what circuits say that was computed before, of one model or of all units under work. What was not computed yet is told on the error
 * stream; the answer then goes by the model file.
 */
export async function circuitsAtHand({ bench, boards, parts }: Session, modelId?: string): Promise<void> {
  if (!boards) return;
  const inUse = [...bench.state().items.values()].filter(({ status }) => UNDER_WORK.includes(status)).map((item) => item.modelId);
  for (const id of new Set(modelId === undefined ? inUse : [modelId])) {
    const model = bench.model(id);
    const progress = model && (await boards.settled(model));
    if (!model || !progress || progress.stage === 'ready') continue;
    parts.err(
      `The circuit of ${model.file.name} is not computed on this bench yet, so this goes by the rest of its model: ` +
        `run "salvor circuits ${id}" once (it takes a minute at most), or open the bench in the browser.`,
    );
  }
}
