import type { BoardMarks } from '../views/board-marks.ts';
import type { GrownModel, GrownPhoto } from './grown-model.ts';

/** What was marked on the picture of the board of a grown model, without who told it when; `seq` is how far into the log it reaches. */
export function boardMarks(grown: GrownModel, seq: number): BoardMarks {
  const { id, photos, parts, joins, names, stepPhotos } = grown;
  return {
    model_id: id,
    grows: true,
    seq,
    front: photoMarks(photos.front),
    back: photoMarks(photos.back),
    parts: [...parts.values()].map(({ eventId: _event, at: _at, author: _author, ...part }) => part),
    joins: joins.map(({ pins, joined }) => ({ pins: [...pins], joined })),
    steps: stepPhotos.map(({ step, photo, places }) => ({ step, photo, places: places.map(([x, y]): [number, number] => [x, y]) })),
    names: names.map(({ pin, name }) => ({ pin, name })),
  };
}

/** Of a model of the folder, which does not grow here: none. */
export const noMarks = (modelId: string, seq: number): BoardMarks => ({
  model_id: modelId,
  grows: false,
  seq,
  front: null,
  back: null,
  parts: [],
  joins: [],
  steps: [],
  names: [],
});

const photoMarks = (photo: GrownPhoto | undefined): BoardMarks['front'] =>
  photo ? { photo: photo.photo, size: photo.size, scale: photo.scale, corners: photo.corners, mirror: photo.mirror } : null;
