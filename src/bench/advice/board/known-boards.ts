import type { BoardSense } from '../../../core/diagnosis/board/index.ts';
import type { Baseline } from '../../../core/diagnosis/readings/index.ts';
import type { BoardKnowledge, Boards } from '../../boards/board-knowledge.ts';
import type { Model } from '../../models/index.ts';
import type { Memo } from '../memo.ts';
import { boardModelBehind, boardModelOf, type BoardModel } from './board-model.ts';

/** While boards are computed, what is believed is thought over so many times. */
const STEPS = 4;

/** Finds for each model what is known of its circuit now. */
export class KnownBoards {
  readonly #boards: Boards | undefined;
  readonly #memo: Memo<BoardModel>;
  /** The latest of each name and areas. */
  readonly #asked = new Map<string, Model>();

  constructor(boards: Boards | undefined, memo: Memo<BoardModel>) {
    this.#boards = boards;
    this.#memo = memo;
  }

  /** Null for a model without a circuit, and while nothing is known of it: then all goes by the model file. */
  of(model: Model): BoardModel | null {
    const behind = boardModelBehind(model);
    if (behind) return behind;
    if (model.circuit) this.#asked.set(JSON.stringify([model.file.id, model.wet ?? []]), model);
    const knowledge = this.#knowledge(model, []);
    if (!knowledge) return null;
    const key = `${keyOf(knowledge)}~${model.version ?? ''}~${model.own?.stamp ?? ''}`;
    return this.#memo.get(key, () => boardModelOf(model, knowledge, key));
  }

  /** With the boards that have a certain fault already, as far as they are computed; `certain` are faults by place in the model. */
  sense({ plain, device, knowledge }: BoardModel, certain: readonly number[]): { sense: BoardSense; key: string } {
    const keys: string[] = [];
    const withFault = new Map<number, Baseline>();
    for (const fault of certain) {
      const known = this.#knowledge(plain, [device.faults[fault]!.id]);
      if (!known || !isLike(known, knowledge)) continue;
      withFault.set(fault, known.baseline);
      keys.push(`${fault}:${keyOf(known)}`);
    }
    const references = new Map(device.points.flatMap(({ id, reference }) => (reference ? [[id, reference] as const] : [])));
    return { sense: { baseline: knowledge.baseline, withFault, references }, key: keys.join(' ') };
  }

  /** How far all that was asked for is known, written out: while it stays the same, so do the answers. */
  stamp(): string {
    return [...this.#asked.values()].map((model) => `${model.file.id}@${this.of(model)?.key ?? ''}`).join(' ');
  }

  #knowledge(model: Model, confirmed: readonly string[]): BoardKnowledge | null {
    const known = model.circuit ? (this.#boards?.knowledge(model, confirmed) ?? null) : null;
    return known && known.baseline.kernels.known[0] === 1 ? known : null;
  }
}

const keyOf = ({ hash, done, rows }: BoardKnowledge): string => `${hash}@${done >= rows ? 'all' : Math.floor((STEPS * done) / rows)}`;

/** The same points on as many drawn boards: only then do readings of the two go together. */
function isLike(one: BoardKnowledge, other: BoardKnowledge): boolean {
  const [a, b] = [one.baseline.kernels.dictionary, other.baseline.kernels.dictionary];
  return a.draws === b.draws && a.points.length === b.points.length && a.faults.length === b.faults.length;
}
