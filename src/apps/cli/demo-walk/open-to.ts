import { STAGES, type Stage } from '../../../bench/events/index.ts';
import type { ItemFile } from '../../../bench/views/index.ts';
import { modelOf, note, type Workplace } from './workplace.ts';

/** Opens a unit as far as the work needs; one that is open far enough stays as it is. */
export function openTo(place: Workplace, file: ItemFile, stage: Stage): void {
  if (STAGES.indexOf(file.stage) < STAGES.indexOf(stage)) move(place, file, stage);
}

/** Puts a unit together again. */
export function close(place: Workplace, file: ItemFile): void {
  if (file.stage !== 'closed') move(place, file, 'closed');
}

/** The minutes between two stages are those of the model, in both directions alike. */
function move(place: Workplace, file: ItemFile, stage: Stage): void {
  const { open, board_out } = modelOf(place, file).file.opening_minutes;
  const depth: Readonly<Record<Stage, number>> = { closed: 0, open, 'board-out': open + board_out };
  const minutes = Math.abs(depth[stage] - depth[file.stage]);
  note(place, 'opened-to', { item_id: file.row.id, stage, minutes });
  place.clock.pass(minutes);
}
