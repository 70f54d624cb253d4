import type { Contradiction, Link, Mend, Mismatch, Where } from '../../core/netting/index.ts';
import { scaledText } from '../../core/quantity/index.ts';
import { netWords } from '../boards/part-remedies.ts';
import type { Mistake } from './mistake-edits.ts';

const ofLink = (link: Link, pinsOf: (join: number) => string): string =>
  'name' in link ? `the name ${netWords(link.name)}` : pinsOf(link.join);

/** What cannot be true at once, and what to do about it. `pinsOf` names the pins of a measurement by its place. */
export function contradictionWords(found: Contradiction, pinsOf: (join: number) => string): { text: string; next: string } {
  const [a, b] = found.pins;
  const chain = found.through.map((link) => ofLink(link, pinsOf)).join(', ');
  const next = `Measure these again, one of them is wrong: ${chain}.`;
  if (found.code === 'measured-apart')
    return { text: `${a} and ${b} were measured as not joined, but other measurements join them.`, next };
  const [one, other] = found.names.map(netWords);
  if (found.code === 'supplies-joined')
    return { text: `${one} at ${a} and ${other} at ${b} are joined: two supplies on one net.`, next: `${next} Or one of the names is.` };
  return { text: `One net has two names: ${one} at ${a} and ${other} at ${b}.`, next: `Take one of the names back. Or: ${next}` };
}

const WHERE: Readonly<Record<Where, string>> = { netlist: 'the netlist', placement: 'the placement', picture: 'the picture' };
const list = (where: readonly Where[]): string => where.map((each) => WHERE[each]).join(' and ');

type OnlyIn = Extract<Mismatch, { code: 'only-in' }>;
export interface MismatchWords {
  readonly text: string;
  readonly mends: readonly string[];
}

/** More references than this that one place lacks are one line; so many of them are named. */
const MOST_LINES = 4;
const NAMED = 8;

/** Mismatches as sentences, with the ways to mend each; many references that the same place lacks are one line. */
export function mismatchList(found: readonly Mismatch[]): MismatchWords[] {
  const groups = new Map<string, Mismatch[]>();
  for (const each of found) {
    const key = each.code === 'only-in' ? `${each.where.join()} ${each.notIn}` : each.code;
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return [...groups.values()].flatMap((group) => {
    const lonely = group.filter((each) => each.code === 'only-in');
    return lonely.length > MOST_LINES ? [manyWords(lonely)] : group.map(mismatchWords);
  });
}

function manyWords(group: readonly OnlyIn[]): MismatchWords {
  const [{ where, notIn }] = group as readonly [OnlyIn, ...OnlyIn[]];
  const more = group.length > NAMED ? ` and ${group.length - NAMED} more` : '';
  const refs = group.slice(0, NAMED).map(({ ref }) => ref);
  return {
    text: `${group.length} parts are in ${list(where)} and not in ${WHERE[notIn]}: ${refs.join(', ')}${more}.`,
    mends: [`Add them to ${WHERE[notIn]}`],
  };
}

/** A mismatch as a sentence, with the ways to mend it. */
const mismatchWords = (found: Mismatch): MismatchWords => ({
  text: textOf(found),
  mends: found.mends.map(mendWords),
});

/** "4.7 k": a value whose unit the kind of the part tells. */
const plainValue = (value: number): string => scaledText(value, '').trim();

function textOf(found: Mismatch): string {
  switch (found.code) {
    case 'only-in':
      return `${found.ref} is in ${list(found.where)} and not in ${WHERE[found.notIn]}.`;
    case 'place-differs':
      return `${found.ref} lies ${Number(found.byMm.toFixed(1))} mm apart in placement and picture${found.sides[0] === found.sides[1] ? '' : `, and on the other side`}.`;
    case 'value-differs':
      return `${found.ref} is ${plainValue(found.drawn)} in the netlist and ${plainValue(found.marked)} as marked.`;
    case 'net-differs':
      return `${found.pin} is drawn at ${netWords(found.drawn)}, but was measured as joined to ${found.as} at ${netWords(found.measured)}.`;
    case 'drawn-as-joined':
      return `${found.pins[0]} and ${found.pins[1]} are both drawn at ${netWords(found.node)}, but were measured as not joined.`;
  }
}

function mendWords(mend: Mend): string {
  switch (mend.does) {
    case 'add':
      return `Add ${mend.ref} to ${WHERE[mend.to]}`;
    case 'remove':
      return `Take ${mend.ref} out of ${WHERE[mend.from]}`;
    case 'rename':
      return `Rename ${mend.ref} to ${mend.to} in ${WHERE[mend.in]}`;
    case 'move':
      return `Move ${mend.ref} in ${WHERE[mend.in]} to ${Number(mend.xMm.toFixed(1))}, ${Number(mend.yMm.toFixed(1))} mm, ${mend.side}`;
    case 'set-value':
      return `Write ${plainValue(mend.value)} for ${mend.ref} in ${WHERE[mend.in]}`;
    case 'rewire':
      return `Draw ${mend.pin} at ${netWords(mend.node)}`;
    case 'measure':
      return `Measure ${mend.pins[0]} to ${mend.pins[1]} again`;
  }
}

/** A likely mistake of the netlist as a sentence, and what to look at. */
export function mistakeWords(mistake: Mistake): { text: string; next: string } {
  switch (mistake.is) {
    case 'extra-part':
      return { text: `${up(mistake.ref)} is drawn and may not be there.`, next: `Look whether ${up(mistake.ref)} is fitted.` };
    case 'wrong-value':
      return {
        text: `The value of ${up(mistake.ref)} may be about ${factorWords(mistake.by)} that which is drawn.`,
        next: `Read the mark of ${up(mistake.ref)} again.`,
      };
    case 'swapped-pins': {
      const [a, b] = mistake.nodes.map(netWords);
      return {
        text: `The pins of ${up(mistake.ref)} at ${a} and ${b} may be exchanged.`,
        next: `Measure from ${up(mistake.ref)} to ${a} and to ${b}.`,
      };
    }
    case 'missing-part': {
      const [a, b] = mistake.nodes.map(netWords);
      return {
        text: `Something of about ${scaledText(mistake.ohm, 'Ω', 1)} between ${a} and ${b} may not be drawn.`,
        next: `Look for a part between ${a} and ${b}.`,
      };
    }
  }
}

const up = (ref: string): string => ref.toUpperCase();

const factorWords = (by: number): string => (by >= 1 ? `${Number(by.toPrecision(2))} times` : `1/${Number((1 / by).toPrecision(2))} of`);
