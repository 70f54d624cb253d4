import { createContext, useContext } from 'react';
import type { ModelFile } from '../../../bench/models/index.ts';
import type { DrawnPart } from '../board/drawn-part.ts';
import type { BenchView, ItemFile } from '../../../bench/views/index.ts';

/** The unit under work, what is known of its model, and the settings of the bench. */
export interface Unit {
  readonly file: ItemFile;
  readonly model: ModelFile;
  readonly bench: BenchView;
  /** Parts on the board of the model as they are drawn; none below level 2. */
  readonly parts: readonly DrawnPart[];
  /** Reference photos that the model comes with. */
  readonly shipped: readonly { readonly side: string; readonly url: string }[];
}

export const UnitContext = createContext<Unit | null>(null);

export function useUnit(): Unit {
  const unit = useContext(UnitContext);
  if (unit === null) throw new Error('useUnit belongs inside the bench page');
  return unit;
}
