/** What the netlist has under one reference. */
export interface DrawnPart {
  readonly ref: string;
  /** Letter of the notation of a part that is one part of it; empty for a chip. */
  readonly letter: string;
  /** Ω, F or H of such a part; null where it has none. */
  readonly value: number | null;
  readonly nodes: readonly string[];
}

/** What the placement, or the marked picture, has under one reference. */
export interface LaidPart {
  readonly ref: string;
  readonly side: 'front' | 'back' | 'off';
  readonly xMm: number;
  readonly yMm: number;
  /** Ω, F or H as marked; null where that is not known. */
  readonly value: number | null;
  /** Node by pin, in order; null where it is not known, and empty where none is. */
  readonly nodes: readonly (string | null)[];
  /** True of a thing that needs no part of the netlist: a test point, a hole. */
  readonly isBare: boolean;
}

export type Where = 'netlist' | 'placement' | 'picture';

/** One way to mend a mismatch. */
export type Mend =
  | { readonly does: 'add'; readonly to: Where; readonly ref: string }
  | { readonly does: 'remove'; readonly from: Where; readonly ref: string }
  | { readonly does: 'rename'; readonly in: Where; readonly ref: string; readonly to: string }
  | {
      readonly does: 'move';
      readonly in: Where;
      readonly ref: string;
      readonly xMm: number;
      readonly yMm: number;
      readonly side: LaidPart['side'];
    }
  | { readonly does: 'set-value'; readonly in: Where; readonly ref: string; readonly value: number }
  | { readonly does: 'rewire'; readonly in: Where; readonly pin: string; readonly node: string }
  | { readonly does: 'measure'; readonly pins: readonly [string, string] };

export type Mismatch = { readonly mends: readonly Mend[] } & (
  | { readonly code: 'only-in'; readonly ref: string; readonly where: readonly Where[]; readonly notIn: Where }
  | {
      readonly code: 'place-differs';
      readonly ref: string;
      readonly byMm: number;
      readonly sides: readonly [LaidPart['side'], LaidPart['side']];
    }
  | { readonly code: 'value-differs'; readonly ref: string; readonly drawn: number; readonly marked: number }
  | { readonly code: 'net-differs'; readonly pin: string; readonly drawn: string; readonly measured: string; readonly as: string }
  | { readonly code: 'drawn-as-joined'; readonly pins: readonly [string, string]; readonly node: string }
);

export interface Sources {
  /** Null for what the model does not have yet: nothing is missing in it. */
  readonly netlist: readonly DrawnPart[] | null;
  readonly placement: readonly LaidPart[] | null;
  readonly picture: readonly LaidPart[] | null;
  /** Nets that were measured, pins as `U1.3`. */
  readonly measured: readonly { readonly pins: readonly string[] }[];
  /** Pairs of pins that were measured as not joined. */
  readonly apart: readonly (readonly [string, string])[];
}

/** Centres further apart than this are not the same place, mm; a value further off by this share is not the same value. Common practice, no source. */
const SAME_PLACE_MM = 1.5;
const SAME_VALUE = 0.05;

const key = (ref: string): string => ref.toUpperCase();
const byRef = <T extends { readonly ref: string }>(parts: readonly T[] | null): ReadonlyMap<string, T> =>
  new Map((parts ?? []).map((part) => [key(part.ref), part]));

/**
 * Where netlist, placement and marked picture do not agree, each with the ways to mend it, the likeliest first: references that one of them lacks, places
 * and values that differ, pins that were measured to be of another net than they are drawn in, pins that are drawn as joined and were measured as not.
 */
export function mismatches(sources: Sources): Mismatch[] {
  return [...missingOnes(sources), ...otherPlaces(sources), ...otherValues(sources), ...otherNets(sources), ...notApart(sources)];
}

function missingOnes({ netlist, placement, picture }: Sources): Mismatch[] {
  const known = { netlist: byRef(netlist), placement: byRef(placement), picture: byRef(picture) };
  const there = (['netlist', 'placement', 'picture'] as const).filter((where) => ({ netlist, placement, picture })[where] !== null);
  const refs = new Map([...(netlist ?? []), ...(placement ?? []), ...(picture ?? [])].map(({ ref }) => [key(ref), ref]));
  return [...refs].flatMap(([id, ref]) => {
    const where = there.filter((each) => known[each].has(id));
    const laid = known.placement.get(id) ?? known.picture.get(id);
    return there
      .filter((each) => !where.includes(each) && isDue(each, laid))
      .map((notIn): Mismatch => {
        const twin = twinOf(id, notIn, known, there);
        const rename: Mend[] = twin === null ? [] : [{ does: 'rename', in: notIn, ref: twin, to: ref }];
        const mends: Mend[] = [...rename, { does: 'add', to: notIn, ref }, ...where.map((from): Mend => ({ does: 'remove', from, ref }))];
        return { code: 'only-in', ref, where, notIn, mends };
      });
  });
}

/** A bare thing needs no part of the netlist, and what is off the board is on no picture. */
function isDue(where: Where, laid: LaidPart | undefined): boolean {
  if (!laid) return true;
  return where === 'netlist' ? !laid.isBare : where === 'picture' ? laid.side !== 'off' : true;
}

type ByWhere = Readonly<Record<Where, ReadonlyMap<string, DrawnPart | LaidPart>>>;

/** A reference that only the other one has and that begins with the same letters: one of the two is misread. Null where not just one is such. */
function twinOf(id: string, where: Where, known: ByWhere, there: readonly Where[]): string | null {
  const letters = id.replace(/\d.*$/, '');
  const lonely = [...known[where]].filter(
    ([other]) => other.replace(/\d.*$/, '') === letters && there.every((each) => each === where || !known[each].has(other)),
  );
  return lonely.length === 1 ? lonely[0]![1].ref : null;
}

function otherPlaces({ placement, picture }: Sources): Mismatch[] {
  const marked = byRef(picture);
  return (placement ?? []).flatMap((laid): Mismatch[] => {
    const seen = marked.get(key(laid.ref));
    if (!seen || laid.side === 'off') return [];
    const byMm = Math.hypot(laid.xMm - seen.xMm, laid.yMm - seen.yMm);
    if (byMm <= SAME_PLACE_MM && laid.side === seen.side) return [];
    const to = (part: LaidPart, where: Where): Mend => {
      const { xMm, yMm, side } = part;
      return { does: 'move', in: where, ref: laid.ref, xMm, yMm, side };
    };
    return [
      { code: 'place-differs', ref: laid.ref, byMm, sides: [laid.side, seen.side], mends: [to(seen, 'placement'), to(laid, 'picture')] },
    ];
  });
}

function otherValues({ netlist, placement, picture }: Sources): Mismatch[] {
  const drawn = byRef(netlist);
  return [['picture', picture] as const, ['placement', placement] as const].flatMap(([where, parts]) =>
    (parts ?? []).flatMap(({ ref, value: marked }): Mismatch[] => {
      const value = drawn.get(key(ref))?.value ?? null;
      if (value === null || marked === null || Math.abs(marked - value) <= SAME_VALUE * Math.abs(value)) return [];
      const mends: Mend[] = [
        { does: 'set-value', in: 'netlist', ref, value: marked },
        { does: 'set-value', in: where, ref, value },
      ];
      return [{ code: 'value-differs', ref, drawn: value, marked, mends }];
    }),
  );
}

/** Node by pin as it is drawn: that of the placement, whose pins have an order; the nodes of the picture do not come from a drawing. */
function drawnNodes({ placement }: Sources): ReadonlyMap<string, string> {
  const pins = (placement ?? []).flatMap(({ ref, nodes }) =>
    nodes.flatMap((node, i) => (node === null ? [] : [[`${key(ref)}.${i + 1}`, node] as const])),
  );
  return new Map(pins);
}

function otherNets(sources: Sources): Mismatch[] {
  const drawn = drawnNodes(sources);
  return sources.measured.flatMap(({ pins }) => {
    const known = pins.flatMap((pin) => (drawn.has(key(pin)) ? [{ pin, node: drawn.get(key(pin))! }] : []));
    const most = commonest(known.map(({ node }) => node));
    if (most === null) return [];
    const as = known.find(({ node }) => node === most)!.pin;
    return known
      .filter(({ node }) => node !== most)
      .map(({ pin, node }): Mismatch => {
        const mends: Mend[] = [
          { does: 'rewire', in: 'placement', pin, node: most },
          { does: 'measure', pins: [as, pin] },
        ];
        return { code: 'net-differs', pin, drawn: node, measured: most, as, mends };
      });
  });
}

/** The value that occurs most often, the first of several; null for none. */
function commonest(values: readonly string[]): string | null {
  const counts = new Map<string, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts].reduce<[string, number] | null>((best, each) => (best && best[1] >= each[1] ? best : each), null)?.[0] ?? null;
}

function notApart(sources: Sources): Mismatch[] {
  const drawn = drawnNodes(sources);
  return sources.apart.flatMap((pins): Mismatch[] => {
    const [a, b] = pins.map((pin) => drawn.get(key(pin)));
    if (a === undefined || a !== b) return [];
    return [{ code: 'drawn-as-joined', pins, node: a, mends: [{ does: 'measure', pins }] }];
  });
}
