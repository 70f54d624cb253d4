import { isForeign, type AnyEvent } from '../events/index.ts';
import { refuse, type Objection, type RuleContext } from './rule.ts';

/** The event is there and counts still; what is brought back finds its names free. */
export function correctionSound(
  { state, eventById }: RuleContext,
  correctsId: string,
  objectionTo: (event: AnyEvent) => Objection | null,
): Objection | null {
  const target = eventById(correctsId);
  if (!target) return refuse('unknown-event', 'body.corrects', `there is no event ${correctsId} in the log`);
  if (state.corrected.has(correctsId)) return refuse('already-corrected', 'body.corrects', 'that event was undone already');
  if (isForeign(target) || target.kind !== 'correction') return null;
  const restored = eventById(target.body.corrects);
  const objection = restored ? objectionTo(restored) : null;
  return objection?.code === 'id-taken' ? { ...objection, field: 'body.corrects' } : null;
}
