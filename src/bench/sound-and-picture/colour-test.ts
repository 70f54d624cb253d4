import { ciede2000, type Lab } from '../../core/vision/index.ts';
import type { TestValue } from '../events/index.ts';
import type { TestSaid } from '../logs/index.ts';
import { verdictByScale } from './verdict-by-scale.ts';

const NAMES = { L: 'L*', a: 'a*', b: 'b*' } as const;

/** The colour of an unfaded shell, from the numbers that were noted of it; null where they are not all there. */
export function referenceColour(values: readonly TestValue[]): Lab | null {
  const of = (name: string): number | undefined => values.find((value) => value.name === name)?.value;
  const [L, a, b] = [of(NAMES.L), of(NAMES.a), of(NAMES.b)];
  return L === undefined || a === undefined || b === undefined ? null : { L, a, b };
}

/** The colour of a shell under a grey card as a test: against an unfaded one of its model a verdict, too. */
export function colourTest(colour: Lab, reference: Lab | null, knownGood: boolean): TestSaid {
  const values: TestValue[] = (['L', 'a', 'b'] as const).map((name) => ({
    name: NAMES[name],
    value: Number(colour[name].toFixed(2)),
    unit: '',
  }));
  if (knownGood) return { verdict: 'good', text: 'The colour of an unfaded shell.', values };
  if (!reference)
    return { verdict: 'not-known', text: 'No unfaded shell of this model was measured yet, so there is nothing to compare with.', values };
  const difference = Number(ciede2000(reference, colour).toFixed(1));
  const yellower = colour.b - reference.b;
  const way =
    Math.abs(yellower) < 1
      ? ''
      : yellower > 0
        ? `, yellower by ${yellower.toFixed(1)} of b*`
        : `, bluer by ${(-yellower).toFixed(1)} of b*`;
  return {
    verdict: verdictByScale({ colour: difference }),
    text: `ΔE00 ${difference} from an unfaded shell${way}.`,
    values: [...values, { name: 'Difference from an unfaded one', value: difference, unit: 'ΔE00', criterion: 'colour' }],
  };
}

/**
 * The colours of several places of a shell as one test: where an unfaded shell is known, each place against it and the verdict by the worst; else how uneven the shell is,
 * as the greatest difference from its first place. One place alone is `colourTest`.
 */
export function coloursTest(colours: readonly Lab[], reference: Lab | null, knownGood: boolean): TestSaid {
  const [first] = colours;
  if (!first) throw new RangeError('a test of colours needs a place');
  if (colours.length === 1 || knownGood) return colourTest(first, reference, knownGood);
  const from = reference ?? first;
  const differences = colours.map((colour) => Number(ciede2000(from, colour).toFixed(1)));
  const worst = differences.indexOf(Math.max(...differences));
  const said = colourTest(colours[worst]!, reference, false);
  const places = differences.map((value, i) => ({ name: `Place ${i + 1}`, value, unit: 'ΔE00' }));
  const text = reference
    ? `Worst at place ${worst + 1} of ${colours.length}: ${said.text}`
    : `${said.text} Its places differ by up to ΔE00 ${differences[worst]} from the first.`;
  return { ...said, text, values: [...said.values, ...places] };
}
