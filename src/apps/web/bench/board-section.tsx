import { BoardOfBlocks } from './board-of-blocks.tsx';
import { PlacedBoard } from './placed-board.tsx';
import { useUnit } from './unit-context.ts';

/** The board with what is known of this one: by its parts where their places are known, else by its blocks; none when the model has no board. */
export function BoardSection() {
  const { file, model, parts } = useUnit();
  if (model.board === undefined || file.row.kind !== 'unit') return null;
  return parts.length > 0 ? <PlacedBoard board={model.board} /> : <BoardOfBlocks />;
}
