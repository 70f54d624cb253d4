import type { BoardBelief } from '../../../core/diagnosis/board/index.ts';
import type { Evidence } from '../../../core/diagnosis/model.ts';

/** More likely than this to say nothing, a reading is to be taken once more. Common practice, no source. */
const DOUBTED = 0.5;

/** The reading since the last change that disagrees most with the rest, where that is more likely a slip than not. `evidence` is what the belief is of, in its order. */
export function doubtedReading(
  { slips }: BoardBelief,
  evidence: readonly Evidence[],
): { readonly id: string; readonly point: string; readonly value: number | null; readonly slip: number } | null {
  const [most] = slips;
  const piece = most && evidence[Number(most.evidenceId)];
  if (!piece || piece.kind !== 'reading' || most.slip < DOUBTED) return null;
  return { id: piece.id, point: piece.point, value: piece.value, slip: most.slip };
}
