import { meetFiles } from '../hostile/local-corpus.ts';
import { sendCorpus } from '../hostile/server-corpus.ts';
import type { Figure, Progress } from './figure.ts';

/** How hostile files and requests were met. */
export async function hostileFigures(progress: Progress): Promise<Figure[]> {
  progress('Sending everything hostile to a server …');
  const { met: sent, written, peakMb } = await sendCorpus('figures of trust');
  const met = [...sent, ...meetFiles()];
  const faults = met.filter(({ fault }) => fault !== null).map(({ name, fault }) => `${name} ${fault!}`);
  const slowest = Math.max(...met.map(({ ms }) => ms));
  return [
    {
      figure: 'trust.hostile_accepted',
      value: faults.length + written.length,
      unit: '',
      target: '= 0',
      reference: `of ${met.length} broken, mislabelled, nested, exploding files and requests: taken, broken by, refused without a sentence, or something written; slowest ${Math.round(slowest)} ms, memory of the server at most ${peakMb} MB${faults.length > 0 ? `; ${faults.join('; ')}` : ''}`,
    },
  ];
}
