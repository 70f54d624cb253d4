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
  return (
    <fieldset className="board-tools" aria-label="Move the picture">
      <ZoomButtons pan={pan} />
      {pan.view.zoom > 1 &&
        ARROWS.map(([sign, name, right, down]) => (
          <button key={name} type="button" className="icon" aria-label={name} onClick={() => pan.move(right, down)}>
            {sign}
          </button>
        ))}
      {children}
    </fieldset>
  );
}

/** Closer, farther and all of a picture. */
export function ZoomButtons({ pan }: { readonly pan: PanZoom }) {
  const isFar = pan.view.zoom <= 1;
  return (
    <>
      <button type="button" onClick={pan.closer}>
        Closer
      </button>
      <button type="button" disabled={isFar} onClick={pan.farther}>
        Farther
      </button>
      <button type="button" disabled={isFar} onClick={pan.whole}>
        All of it
      </button>
    </>
  );
}
