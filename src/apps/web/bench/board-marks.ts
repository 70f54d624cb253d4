import type { LeadMark, LikelyPart, SeenMark } from '../board/marks-layer.tsx';
import type { DrawnPart } from '../board/drawn-part.ts';
import type { BeliefView, ItemFile, ProbeView } from '../../../bench/views/index.ts';
import type { ModelFile } from '../../../bench/models/schema.ts';
import { outcomeWords } from '../format/words.ts';
import { leadWords } from './lead-words.ts';

/** Fainter than this share of the likeliest, a part is not shaded. */
const FAINTEST = 0.04;
const STRONGEST_SHADE = 0.75;

/** Parts by how likely they, or what cannot be told from them, are at fault. */
export function likelyParts({ hypotheses }: Pick<BeliefView, 'hypotheses'>): LikelyPart[] {
  const chances = new Map<string, number>();
  for (const { faults, alike, chance } of hypotheses) {
    const refs = new Set([...faults, ...alike].flatMap((fault) => fault.refs.slice(0, 1)));
    for (const ref of refs) chances.set(ref, (chances.get(ref) ?? 0) + chance);
  }
  const most = Math.max(...chances.values(), 0);
  return [...chances]
    .filter(([, chance]) => chance >= FAINTEST * most)
    .map(([ref, chance]) => ({ ref, shade: (STRONGEST_SHADE * chance) / most }));
}

/** Where the leads of a measurement go: each at its handiest pad. */
export function leadMarks(probe: ProbeView | null): LeadMark[] {
  return (['red', 'black'] as const).flatMap((lead) => {
    const [pad] = probe?.[lead]?.pads ?? [];
    return pad ? [{ lead, text: leadWords(pad), at: { x: pad.x_mm, y: pad.y_mm }, side: pad.side }] : [];
  });
}

/** What was seen on this board: at parts, at blocks, over areas. */
export function seenMarks(findings: ItemFile['findings'], blocks: ModelFile['blocks'], parts: readonly DrawnPart[]): SeenMark[] {
  return findings
    .filter(({ sees }) => sees !== 'nothing-wrong')
    .flatMap(({ event_id: id, place, name, sees, region }): SeenMark[] => {
      const text = `${name}: ${outcomeWords(sees).toLowerCase()}`;
      const part = parts.find(({ ref }) => ref === place);
      const at = blocks.find((block) => block.id === place)?.at;
      if (region) return [{ id, text: `${text}, over an area`, at: null, side: region.side, region }];
      if (part) return [{ id, text, at: part, side: part.side, region: null }];
      return at ? [{ id, text, at: { x: at[0], y: at[1] }, side: 'both', region: null }] : [];
    });
}
