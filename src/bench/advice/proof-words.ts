import type { Model } from '../models/index.ts';
import { PROOF_OF_FUNCTION } from './evidence.ts';
import { referenceOf } from '../models/reference.ts';
import { blockName, listed, lower, reading } from './say.ts';
import { TOUCHES, type Touch } from './touched-by-work.ts';

/** Readings of good boards spread by so many of their spreads before one is called wrong. Common practice, no source. */
const WIDTH = 3;
/** More than this many points make a list that nobody reads. */
const MOST_POINTS = 3;

/** What counts as passed for a function: working each time, and with points on its chain the readings of known-good boards. */
export function limitsOf(model: Model, fn: string): string[] {
  const blocks = blocksOf(model, fn);
  const points = model.file.points.filter(
    ({ block, mode, power, stage }) => blocks.has(block) && mode === 'volts' && power !== 'off' && stage === 'closed',
  );
  const limits = points.flatMap((point) => {
    const reference = referenceOf(model, point.id, point.mode);
    if (!reference || reference.mean === null) return [];
    const half = WIDTH * reference.spread;
    return [
      `${point.name}: ${reading(reference.mean - half, 'volts')} to ${reading(reference.mean + half, 'volts')}, as known-good boards show.`,
    ];
  });
  return ['It works three times of three, and after the unit was shaken gently.', ...limits.slice(0, MOST_POINTS)];
}

const WORDS: Readonly<Record<Touch, (blocks: string) => string>> = {
  'worked-on': (blocks) => `The work was on: ${blocks}.`,
  moved: (blocks) => `Came out or was put in: ${blocks}.`,
  'near-heat': (blocks) => `Lies near what was heated: ${blocks}.`,
  opened: (blocks) => `Was opened or unplugged on the way: ${blocks}.`,
};

/** What of a function the work touched, the strongest first; nothing for the base set, which is for every unit. */
export function becauseOf(model: Model, step: string, touched: ReadonlyMap<string, Touch>): string[] {
  const fn = model.file.functions.find(({ id }) => `${PROOF_OF_FUNCTION}${id}`.slice(0, 64) === step);
  if (!fn) return [];
  const blocks = [...blocksOf(model, fn.id)];
  return TOUCHES.flatMap((touch) => {
    const mine = blocks.filter((block) => touched.get(block) === touch);
    return mine.length === 0 ? [] : [WORDS[touch](listed(mine.map((block) => lower(blockName(model, block)))))];
  });
}

function blocksOf(model: Model, fn: string): Set<string> {
  const needs = model.file.functions.find(({ id }) => id === fn)?.needs ?? [];
  return new Set(needs.flatMap((need) => (typeof need === 'string' ? [need] : need.any)));
}
