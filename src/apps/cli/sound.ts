import type { Refusal } from '../../bench/bench.ts';
import { problemOfRefusal } from '../../bench/words.ts';
import { EXIT, Stop } from './stop.ts';

/** An answer as it is; a refusal ends the command. */
export function sound<T extends object>(answer: T | Refusal): T {
  if ('ok' in answer) throw new Stop(EXIT.usage, problemOfRefusal(answer as Refusal));
  return answer as T;
}
