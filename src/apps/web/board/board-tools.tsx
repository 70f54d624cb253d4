import type { ReactNode } from 'react';
import type { PanZoom } from './use-pan-zoom.ts';

const ARROWS = [
  ['←', 'Left', -1, 0],
  ['→', 'Right', 1, 0],
  ['↑', 'Up', 0, -1],
  ['↓', 'Down', 0, 1],
] as const;

/** Buttons that move and zoom the picture of a board, for those who have neither wheel nor two fingers free. */
export function BoardTools({ pan, children }: { readonly pan: PanZoom; readonly children?: ReactNode }) {
  const near = pan.view.zoom > 1;
  return (
    <fieldset className="board-tools" aria-label="Move the picture">
      <button type="button" onClick={pan.closer}>
        Closer
      </button>
      <button type="button" disabled={!near} onClick={pan.farther}>
        Farther
      </button>
      <button type="button" disabled={!near} onClick={pan.whole}>
        All of it
      </button>
      {near &&
        ARROWS.map(([sign, name, right, down]) => (
          <button key={name} type="button" className="icon" aria-label={name} onClick={() => pan.move(right, down)}>
            {sign}
          </button>
        ))}
      {children}
    </fieldset>
  );
}
