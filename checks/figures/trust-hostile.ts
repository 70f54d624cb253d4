import { fuzz } from '../hostile/fuzz.ts';
import { meetFiles } from '../hostile/local-corpus.ts';
import { PARSERS } from '../hostile/parsers.ts';
import { sendCorpus } from '../hostile/server-corpus.ts';
import { round, type Figure, type Progress } from './figure.ts';

const INPUTS = 1_000_000;

/** How hostile files, requests and texts were met. */
export async function hostileFigures(progress: Progress): Promise<Figure[]> {
  progress('Sending everything hostile to a server …');
  const { met: sent, written, peakMb } = await sendCorpus('figures of trust');
  const met = [...sent, ...meetFiles()];
  const faults = met.filter(({ fault }) => fault !== null).map(({ name, fault }) => `${name} ${fault!}`);
  const slowest = Math.max(...met.map(({ ms }) => ms));
  const results = PARSERS.map((parser) => {
    progress(`Trying ${INPUTS.toLocaleString('en')} texts on the reader of ${parser.name} …`);
    return { name: parser.name, ...fuzz(parser, 42, INPUTS) };
  });
  const crashes = results.filter(({ crash }) => crash !== null);
  const shares = results.map(({ name, taken, tried, slowestMs }) => `${name} ${round(taken / tried, 2)} (${Math.round(slowestMs)} ms)`);
  return [
    {
      figure: 'trust.hostile_accepted',
      value: faults.length + written.length,
      unit: '',
      target: '= 0',
      reference: `of ${met.length} broken, mislabelled, nested, exploding files and requests: taken, broken by, refused without a sentence, or something written; slowest ${Math.round(slowest)} ms, memory of the server at most ${peakMb} MB${faults.length > 0 ? `; ${faults.join('; ')}` : ''}`,
    },
    {
      figure: 'trust.fuzz_inputs',
      value: Math.min(...results.map(({ tried }) => tried)),
      unit: '',
      target: '≥ 1000000',
      reference: `texts tried on each reader, made of good ones by up to six edits; share that was taken, and the slowest: ${shares.join(', ')}`,
    },
    {
      figure: 'trust.fuzz_crashes',
      value: crashes.length,
      unit: '',
      target: '= 0',
      reference: `readers of ${results.length} that fell over, refused without a word or took more than 2 s${crashes.map(({ name, crash }) => `; ${name}: ${crash!.error}`).join('')}`,
    },
  ];
}
