import { useEffect, useRef, useState, type KeyboardEvent, type PointerEvent, type RefObject } from 'react';
import { closer, moved, toPicture, turnedOver, viewBox, wholeView, within, type Frame, type Place, type View } from './frame.ts';

const STEP = 1.5;
/** A finger that moves less than this has tapped, px. */
const TAP_PX = 8;
/** An arrow key moves by this share of what is seen. */
const ARROW_SHARE = 0.15;

/** What is in the window of one side; two pictures that hold the same one move together. */
export interface HeldView {
  readonly view: View;
  readonly side: Frame['side'];
}

interface PanZoomProps {
  readonly svg: RefObject<SVGSVGElement | null>;
  readonly frame: Frame;
  /** A tap at a place of the board, mm; `mmPerPx` tells how thick a finger is there. */
  readonly onTap: (at: Place, mmPerPx: number) => void;
  /** While given, one finger draws instead of moving the picture. */
  readonly onDrag: ((from: Place, to: Place, done: boolean) => void) | null;
  /** Held outside, to be shared; else this picture holds its own. */
  readonly held?: readonly [HeldView, (held: HeldView) => void];
}

export interface PanZoom {
  readonly view: View;
  readonly box: string;
  readonly closer: () => void;
  readonly farther: () => void;
  readonly whole: () => void;
  readonly move: (right: number, down: number) => void;
  /** Brings a place of the board into the middle, at least so close. */
  readonly show: (at: Place, zoom: number) => void;
  readonly pointer: {
    readonly onPointerDown: (event: PointerEvent<SVGSVGElement>) => void;
    readonly onPointerMove: (event: PointerEvent<SVGSVGElement>) => void;
    readonly onPointerUp: (event: PointerEvent<SVGSVGElement>) => void;
    readonly onPointerCancel: (event: PointerEvent<SVGSVGElement>) => void;
  };
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

interface Finger {
  readonly start: Place;
  readonly startPx: Place;
  last: Place;
  tapped: boolean;
}

/** Moves and zooms a board by one finger, two fingers, wheel with Ctrl, keys and buttons. Turning the board over keeps the place. */
export function usePanZoom({ svg, frame, onTap, onDrag, held }: PanZoomProps): PanZoom {
  const own = useState<HeldView>({ view: wholeView(frame), side: frame.side });
  const [kept, setKept] = held ?? own;
  const view = within(frame, kept.side === frame.side ? kept.view : turnedOver(frame, kept.view));
  const set = (next: View): void => setKept({ view: within(frame, next), side: frame.side });
  const fingers = useRef(new Map<number, Finger>());

  const pictureAt = (px: Place): Place => {
    const matrix = svg.current?.getScreenCTM()?.inverse();
    const point = matrix ? new DOMPoint(px.x, px.y).matrixTransform(matrix) : new DOMPoint();
    return { x: point.x, y: point.y };
  };
  const mmPerPx = (): number => svg.current?.getScreenCTM()?.inverse().a ?? 1;
  const boardAt = (px: Place): Place => toPicture(frame, pictureAt(px));

  const pinch = (id: number, to: Place): void => {
    const other = [...fingers.current].find(([each]) => each !== id)![1];
    const mine = fingers.current.get(id)!;
    const before = Math.hypot(mine.last.x - other.last.x, mine.last.y - other.last.y);
    const after = Math.hypot(to.x - other.last.x, to.y - other.last.y);
    const about = pictureAt({ x: (to.x + other.last.x) / 2, y: (to.y + other.last.y) / 2 });
    if (before > 0) set(closer(frame, view, after / before, about));
  };

  const onPointerMove = (event: PointerEvent<SVGSVGElement>): void => {
    const finger = fingers.current.get(event.pointerId);
    if (!finger) return;
    const to = { x: event.clientX, y: event.clientY };
    if (Math.hypot(to.x - finger.startPx.x, to.y - finger.startPx.y) > TAP_PX) finger.tapped = false;
    if (fingers.current.size > 1) pinch(event.pointerId, to);
    else if (!finger.tapped && onDrag) onDrag(finger.start, boardAt(to), false);
    else if (!finger.tapped && view.zoom > 1) {
      const scale = mmPerPx();
      set(moved(frame, view, { x: (finger.last.x - to.x) * scale, y: (finger.last.y - to.y) * scale }));
    }
    finger.last = to;
  };

  const onPointerUp = (event: PointerEvent<SVGSVGElement>): void => {
    const finger = fingers.current.get(event.pointerId);
    fingers.current.delete(event.pointerId);
    if (!finger || fingers.current.size > 0) return;
    const at = boardAt({ x: event.clientX, y: event.clientY });
    if (finger.tapped) onTap(at, mmPerPx());
    else onDrag?.(finger.start, at, true);
  };

  useEffect(() => {
    const element = svg.current;
    if (element === null) return undefined;
    const onWheel = (event: WheelEvent): void => {
      if (!event.ctrlKey) return;
      event.preventDefault();
      set(closer(frame, view, Math.exp(-event.deltaY / 200), pictureAt({ x: event.clientX, y: event.clientY })));
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => element.removeEventListener('wheel', onWheel);
  });

  const move = (right: number, down: number): void =>
    set(moved(frame, view, { x: (right * ARROW_SHARE * frame.width) / view.zoom, y: (down * ARROW_SHARE * frame.height) / view.zoom }));
  const commands = {
    closer: () => set(closer(frame, view, STEP)),
    farther: () => set(closer(frame, view, 1 / STEP)),
    whole: () => set(wholeView(frame)),
  };
  return {
    view,
    box: viewBox(frame, view),
    ...commands,
    move,
    show: (at, zoom) => set({ ...toPicture(frame, at), zoom: Math.max(zoom, view.zoom) }),
    pointer: {
      onPointerDown: (event) => {
        const startPx = { x: event.clientX, y: event.clientY };
        fingers.current.set(event.pointerId, { start: boardAt(startPx), startPx, last: startPx, tapped: fingers.current.size === 0 });
        if (event.pointerType === 'mouse' || onDrag) event.currentTarget.setPointerCapture(event.pointerId);
      },
      onPointerMove,
      onPointerUp,
      onPointerCancel: (event) => void fingers.current.delete(event.pointerId),
    },
    onKeyDown: (event) => {
      const command = commandOf(event.key, commands, move);
      if (!command || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      command();
    },
  };
}

type Commands = Record<'closer' | 'farther' | 'whole', () => void>;

function commandOf(key: string, { closer: nearer, farther, whole }: Commands, move: PanZoom['move']): (() => void) | undefined {
  const keys: Readonly<Record<string, () => void>> = {
    '+': nearer,
    '=': nearer,
    '-': farther,
    '0': whole,
    ArrowLeft: () => move(-1, 0),
    ArrowRight: () => move(1, 0),
    ArrowUp: () => move(0, -1),
    ArrowDown: () => move(0, 1),
  };
  return keys[key];
}
