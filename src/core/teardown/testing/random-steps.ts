import { randomStream } from '../../numeric/index.ts';
import type { Need, Step } from '../step.ts';

/** Steps that can all be done, with needs on earlier ones of which some are alternatives, and a goal of one or two of the last. */
export function randomSteps(seed: string, count: number): { readonly steps: Step[]; readonly goal: Need[] } {
  const next = randomStream(seed);
  const below = (n: number): number => Math.floor(next() * n);
  const pick = <T>(from: readonly T[]): T => from[below(from.length)]!;
  const tools = [null, 'cross', 'pick', 'iron'].slice(0, 2 + below(3));
  const steps = Array.from({ length: count }, (_, i): Step => {
    const earlier = Array.from({ length: i }, (__, j) => `s${j}`);
    const needs: Need[] = [];
    const wanted = below(3);
    for (let k = i > 0 ? wanted : 0; k > 0; k--)
      needs.push(i > 1 && next() < 0.5 ? { any: [...new Set([pick(earlier), pick(earlier), pick(earlier)])] } : pick(earlier));
    return {
      id: `s${i}`,
      needs,
      tool: pick(tools),
      side: pick([null, 'front', 'back']),
      minutes: below(5) / 2,
      risk: next() < 0.3 ? below(4) / 400 : 0,
    };
  });
  const last = steps.slice(-3).map(({ id }) => id);
  const goal: Need[] = next() < 0.3 ? [{ any: last }] : next() < 0.5 ? [pick(last)] : [last.at(-1)!, pick(last)];
  // An order of the file that is not that of the needs.
  return {
    steps: steps
      .map((step) => ({ step, at: next() }))
      .sort((a, b) => a.at - b.at)
      .map(({ step }) => step),
    goal,
  };
}
