import { fitPart, partFromDrawing, placed, type Pattern } from '../../src/core/fit/index.ts';
import { answerPair } from '../fit/answer-pair.ts';
import { ABSENT, library, pairs, patternAt } from '../fit/footprints.ts';
import { quantile, round, type Figure, type Progress } from './figure.ts';

const ROUNDS = 20;
const WARM_UP = 3;

/** The figures of fit: how long one question takes, and how many published pairs are answered rightly. */
export async function fitFigures(progress: Progress): Promise<Figure[]> {
  const files = library();
  if (!files) progress(`fit.pairs_right is left out: ${ABSENT}`);
  progress('Measuring fit …');
  const known =
    files && pairs().map((pair) => ({ ...pair, over: patternAt(files.get(pair.part)!), under: patternAt(files.get(pair.place)!) }));
  const asked = known?.map(({ over, under }) => [over, under] as const) ?? drawnPairs();
  const right = known?.filter(({ over, under, answer }) => answerPair(over, under) === answer).length;
  return [
    {
      figure: 'fit.ms',
      value: round(quantile(timesOf(asked), 0.95)),
      unit: 'ms',
      target: '≤ 50',
      reference: `95 of 100 questions, ${asked.length} pairs ${ROUNDS} times each, warm`,
    },
    ...(known
      ? [
          {
            figure: 'fit.pairs_right',
            value: round(right! / known.length),
            unit: '',
            target: '= 1',
            reference: `${right} of ${known.length} published pairs (checks/fit/SOURCE.md)`,
          },
        ]
      : []),
  ];
}

function timesOf(asked: readonly (readonly [Pattern, Pattern])[]): number[] {
  const times: number[] = [];
  for (let at = -WARM_UP; at < ROUNDS; at++)
    for (const [over, under] of asked) {
      const start = performance.now();
      fitPart(over, under);
      if (at >= 0) times.push(performance.now() - start);
    }
  return times;
}

/** Parts by their drawings on their own feet, turned: what can be timed without the published patterns. */
function drawnPairs(): [Pattern, Pattern][] {
  const drawn = [8, 14, 48, 100].map((pins) =>
    partFromDrawing({
      name: `${pins} pins`,
      kind: 'gull-wing',
      sides: pins > 40 ? 4 : 2,
      pins,
      pitchMm: pins > 40 ? 0.5 : 1.27,
      spanMm: [pins > 40 ? pins / 8 + 3 : 5.8, pins > 40 ? pins / 8 + 3.4 : 6.2],
      footMm: [0.45, 0.75],
      widthMm: [0.17, 0.27],
      heightMm: null,
      legMm: null,
      pegs: null,
    }),
  );
  return drawn.map((part) => [part, placed(part, { turnDeg: 90, dxMm: 3, dyMm: -2 })]);
}
