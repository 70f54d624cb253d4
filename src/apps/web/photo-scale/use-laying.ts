import { useState } from 'react';
import { distanceMarks, knownMarks, type KnownMark } from '../../../bench/photo-scale/index.ts';
import {
  register,
  type BoardSide,
  type MarkPair,
  type Point,
  type Registration,
  type RegistrationRefusal,
} from '../../../core/vision/index.ts';
import { useUnit } from '../bench/unit-context.ts';

export type LayBy = 'model' | 'distance';

/** How the photo is laid on its board. */
export interface Laying {
  readonly by: LayBy;
  readonly setBy: (by: LayBy) => void;
  readonly side: BoardSide;
  readonly setSide: (side: BoardSide) => void;
  readonly apartMm: number;
  readonly setApartMm: (mm: number) => void;
  readonly known: readonly KnownMark[];
  /** The one that a tap marks next. */
  readonly next: KnownMark | undefined;
  readonly setNext: (id: string) => void;
  readonly marks: readonly MarkPair[];
  readonly mark: (at: Point) => void;
  readonly take: (places: readonly (Point | null)[]) => void;
  readonly remove: (name: string) => void;
  readonly place: Registration | RegistrationRefusal;
}

/** Marks on a photo by places that the model knows, or by one known distance; where the model knows none, by distance. */
export function useLaying(seen: BoardSide): Laying {
  const { model, parts } = useUnit();
  const [side, setSide] = useState<BoardSide>(seen);
  const byModel = knownMarks(model.board, parts, side);
  const [by, setBy] = useState<LayBy>(byModel.length > 1 ? 'model' : 'distance');
  const [apartMm, setApartMm] = useState(10);
  const [chosen, setNext] = useState<string | null>(null);
  const [at, setAt] = useState<Readonly<Record<string, Point>>>({});
  const known = by === 'model' ? byModel : distanceMarks(apartMm);
  const free = known.filter(({ id }) => !at[id]);
  const next = known.find(({ id }) => id === chosen) ?? free[0] ?? known[0];
  const marks = known.flatMap(({ id, name, boardMm }): MarkPair[] => (at[id] ? [{ name, boardMm, photoPx: at[id] }] : []));
  const mark = (spot: Point): void => {
    if (!next) return;
    setAt({ ...at, [next.id]: spot });
    setNext(null);
  };
  const take = (places: readonly (Point | null)[]): void =>
    setAt({ ...at, ...Object.fromEntries(known.flatMap(({ id }, i) => (places[i] ? [[id, places[i]]] : []))) });
  const remove = (name: string): void => {
    const id = known.find((each) => each.name === name)?.id;
    setAt(Object.fromEntries(Object.entries(at).filter(([key]) => key !== id)));
  };
  const place = register(marks, by === 'model' ? side : 'front');
  return { by, setBy, side, setSide, apartMm, setApartMm, known, next, setNext, marks, mark, take, remove, place };
}
