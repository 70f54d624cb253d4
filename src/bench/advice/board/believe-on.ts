import { believeBoard, type BoardBelief, type BoardSense } from '../../../core/diagnosis/board/index.ts';
import type { Evidence } from '../../../core/diagnosis/model.ts';
import type { Memo } from '../memo.ts';
import type { BoardModel } from './board-model.ts';
import type { KnownBoards } from './known-boards.ts';

/** What is believed through the circuit, and from what. */
export interface OnBoard {
  readonly known: BoardModel;
  readonly sense: BoardSense;
  readonly belief: BoardBelief;
}

/** So many parts that were seen to be missing are thought of beside each other fault, the latest first; more than two faults at once are thought of never. */
const MOST_CERTAIN = 2;

/** The belief by the circuit. `evidence` is named by its place; `question` is that it is of, written out. */
export function believeOn(
  boards: KnownBoards,
  known: BoardModel,
  evidence: readonly Evidence[],
  question: string,
  memo: Memo<BoardBelief>,
): { onBoard: OnBoard; key: string } {
  const certain = certainFaults(known, evidence);
  const { sense, key: withKey } = boards.sense(known, certain);
  const key = `${question}|${known.key}|${withKey}`;
  const belief = memo.get(key, () => believeBoard(known.device, evidence, sense, { certain }));
  return { onBoard: { known, sense, belief }, key };
}

/** Parts that were seen to be missing, as places of faults in the model. */
function certainFaults({ device, faults }: BoardModel, evidence: readonly Evidence[]): number[] {
  const missing = evidence.flatMap((piece) => (piece.kind === 'finding' && piece.sees === 'missing' && piece.part ? [piece.part] : []));
  const places = missing
    .toReversed()
    .map((part) => device.faults.findIndex(({ id, part: own }) => own === part && faults.get(id)?.circuit.kind === 'missing'));
  return [...new Set(places.filter((place) => place >= 0))].slice(0, MOST_CERTAIN);
}
