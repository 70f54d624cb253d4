/** A board as it lies: its size in mm and the side that is seen. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly side: 'front' | 'back';
}

/** What of the picture is in the window: the middle, in mm of the picture, and how many times closer than the whole. */
export interface View {
  readonly x: number;
  readonly y: number;
  readonly zoom: number;
}

/** A place in mm. */
export interface Place {
  readonly x: number;
  readonly y: number;
}

/** Free room around the board, mm. */
export const MARGIN_MM = 1.5;
export const CLOSEST = 12;

/** From board mm (lower left corner of the front, y up) to picture mm (upper left corner of what is seen, y down). The same turns it back. */
export const toPicture = ({ width, height, side }: Frame, { x, y }: Place): Place => ({
  x: side === 'front' ? x : width - x,
  y: height - y,
});

export const wholeView = ({ width, height }: Frame): View => ({ x: width / 2, y: height / 2, zoom: 1 });

/** The view kept within reach of the board: at zoom 1 it is the whole of it. */
export function within({ width, height }: Frame, view: View): View {
  const zoom = Math.min(CLOSEST, Math.max(1, view.zoom));
  const middle = (at: number, size: number): number => {
    const half = (size + 2 * MARGIN_MM) / 2 / zoom;
    return Math.min(Math.max(at, half - MARGIN_MM), size + MARGIN_MM - half);
  };
  return { x: middle(view.x, width), y: middle(view.y, height), zoom };
}

/** Closer by `factor`, with what lies at `about` staying where it is in the window. */
export function closer(frame: Frame, view: View, factor: number, about: Place = view): View {
  const zoom = Math.min(CLOSEST, Math.max(1, view.zoom * factor));
  const kept = view.zoom / zoom;
  return within(frame, { x: about.x + (view.x - about.x) * kept, y: about.y + (view.y - about.y) * kept, zoom });
}

/** Moved by mm of the picture. */
export const moved = (frame: Frame, view: View, by: Place): View => within(frame, { ...view, x: view.x + by.x, y: view.y + by.y });

/** The same place seen from the other side, as close as before. */
export const turnedOver = (frame: Frame, view: View): View => ({ ...view, x: frame.width - view.x });

/** As the attribute of an SVG. */
export function viewBox({ width, height }: Frame, { x, y, zoom }: View): string {
  const [w, h] = [(width + 2 * MARGIN_MM) / zoom, (height + 2 * MARGIN_MM) / zoom];
  return [x - w / 2, y - h / 2, w, h].map((value) => Number(value.toFixed(3))).join(' ');
}
