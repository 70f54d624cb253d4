import type { BehaviourKind } from '../netlist/types.ts';
import type { BoardLaw, Params } from './laws/board-law.ts';
import { Boost } from './laws/boost.ts';
import { Buck } from './laws/buck.ts';
import { Charger } from './laws/charger.ts';
import { Linreg } from './laws/linreg.ts';
import { Load } from './laws/load.ts';

/** The equations of each behavioural part but the battery, which is a source with a resistance. */
export const BOARD_LAWS: Readonly<Record<Exclude<BehaviourKind, 'BATTERY'>, (params: Params) => BoardLaw>> = {
  LINREG: (params) => new Linreg(params),
  BUCK: (params) => new Buck(params),
  BOOST: (params) => new Boost(params),
  CHARGER: (params) => new Charger(params),
  LOAD: (params) => new Load(params),
};
