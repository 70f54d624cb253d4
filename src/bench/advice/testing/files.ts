import { createAdvisor } from '../advisor.ts';
import { assertSound } from './assert-sound.ts';
import { benchOf, bought, did, tried } from './bench-of.ts';
import { pocketModels } from './pocket-model.ts';

export type Steps = Parameters<typeof benchOf>[0];

export const one = (...steps: Steps): Steps => [...bought('lot', 'marsh-lane', ['u1']), ...steps];

/** The file of a unit after such steps, checked by the laws of advice. */
export function fileOf(id: string, steps: Steps) {
  const parts = createAdvisor(pocketModels()).fileParts(benchOf(steps), id);
  assertSound(parts);
  return parts;
}

/** The file after every check that is advised has been declined: what is left is to act. */
export function fileWithoutChecks(id: string, steps: Steps) {
  const declined: Steps[number][] = [];
  for (;;) {
    const parts = fileOf(id, [...steps, ...declined]);
    if (parts.advice.do !== 'check') return parts;
    declined.push(['advice-declined', { item_id: id, advice: parts.advice.id }]);
  }
}

export const chanceOf = (parts: ReturnType<typeof fileOf>, block: string): number =>
  parts.belief.blocks.find(({ id }) => id === block)!.chance;

export const allWork: Steps = [tried('u1', 'power', 'works'), tried('u1', 'picture', 'works'), tried('u1', 'sound', 'works')];

/** Nothing comes, even with a good battery, and the converter gives its volts and the contacts are clean: the processor. */
export const deadProcessor = (id: string): Steps => [
  ['reading-taken', { item_id: id, point: 'vsys', mode: 'volts', value: 3.29 }],
  tried(id, 'power', 'works'),
  tried(id, 'power', 'works'),
  tried(id, 'picture', 'fails'),
  tried(id, 'sound', 'fails'),
  tried(id, 'picture', 'fails'),
  did(id, 'clean-contacts', 'not-mended'),
  tried(id, 'picture', 'fails'),
  did(id, 'clean-contacts', 'not-mended'),
  tried(id, 'sound', 'fails'),
];

export const goodUnit = (id: string): Steps =>
  ['power', 'picture', 'sound'].flatMap((fn) => [tried(id, fn, 'works'), tried(id, fn, 'works')]);
