import { toPicture, type Frame } from '../board/frame.ts';
import type { Ghost } from './ghosts.ts';

interface GhostsLayerProps {
  readonly frame: Frame;
  readonly scale: number;
  readonly ghosts: readonly Ghost[];
}

/** What the photo proposes, dashed; the surer the fuller. */
export function GhostsLayer({ frame, scale, ghosts }: GhostsLayerProps) {
  return ghosts.map((ghost, i) => {
    if (ghost.side !== frame.side) return null;
    const points = ghost.outline.map((at) => toPicture(frame, at)).map(({ x, y }) => `${x},${y}`);
    return (
      // oxlint-disable-next-line react/no-array-index-key -- ghosts have no name; what is left of them keeps its order
      <polygon key={i} className="ghost" points={points.join(' ')} strokeWidth={0.3 * scale} strokeOpacity={0.4 + 0.6 * ghost.chance}>
        <title>{`${GHOST_WORDS[ghost.kind]}, ${Math.round(100 * ghost.chance)} % sure${ghost.reference === null ? '' : `, beside it ${ghost.reference}`}`}</title>
      </polygon>
    );
  });
}

const GHOST_WORDS = { part: 'A part', 'pin-row': 'A row of pins', 'test-point': 'A test point', hole: 'A hole' } as const;
