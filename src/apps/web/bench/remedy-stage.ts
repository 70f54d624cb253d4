import type { Stage } from '../../../bench/events/index.ts';
import type { RemedyView } from '../../../bench/views/index.ts';
import type { Unit } from './unit-context.ts';

/** How far a unit must be open for a remedy: as the model says, else board out for work on parts of the board. */
export const remedyStage = (remedy: Pick<RemedyView, 'id'> & Partial<Pick<RemedyView, 'spots'>>, { model, file }: Unit): Stage =>
  model.remedies.find(({ id }) => id === remedy.id)?.stage ?? (remedy.spots && remedy.spots.length > 0 ? 'board-out' : file.stage);
