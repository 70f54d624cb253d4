import type { LeadMark, LikelyPart, SeenMark } from '../board/marks-layer.tsx';
import type { RemedyView } from '../../../bench/views/index.ts';

interface Marks {
  readonly likely: readonly LikelyPart[];
  readonly leads: readonly LeadMark[];
  readonly seen: readonly SeenMark[];
  readonly work: RemedyView['spots'];
}

/** What the picture shows, in words: for those who hear it, and for what lies on the other side. */
export function BoardWords({ side, net, marks }: { readonly side: 'front' | 'back'; readonly net: string | null; readonly marks: Marks }) {
  const { likely, leads, seen, work } = marks;
  const beyond = (at: string): string => (at === side || at === 'both' ? '' : ` (on the ${at})`);
  const lines = [
    leads.length > 0 &&
      `Rings mark where the leads go: ${leads.map((mark) => `${mark.lead} ${mark.text}${beyond(mark.side)}`).join(', ')}.`,
    net !== null && `Thin frames mark the other pads of ${net}.`,
    work.length > 0 && `Thick frames mark what to work on: ${work.map((spot) => `${spot.ref}${beyond(spot.side)}`).join(', ')}.`,
    likely.length > 0 &&
      `The stronger the colour of a part, the likelier it, or one that cannot be told from it, is at fault; first ${likelyWords(likely)}.`,
    seen.length > 0 && `Seen: ${seen.map((mark) => `${mark.text}${beyond(mark.side)}`).join('; ')}.`,
  ].filter((line) => line !== false);
  return lines.length > 0 && <p className="small muted">{lines.join(' ')}</p>;
}

const MOST_NAMED = 3;

const likelyWords = (likely: readonly LikelyPart[]): string =>
  likely
    .toSorted((a, b) => b.shade - a.shade)
    .slice(0, MOST_NAMED)
    .map(({ ref }) => ref)
    .join(', ');
