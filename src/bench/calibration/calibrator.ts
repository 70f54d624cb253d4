import { createAdvisor } from '../advice/index.ts';
import { isForeign, type BenchEvent, type Stored } from '../events/index.ts';
import { emptyState, foldLog } from '../fold/index.ts';
import { modelsWithGrown } from '../grow/models-with-grown.ts';
import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import type { CalibrationView } from '../views/index.ts';
import { calibrationView } from './calibration-view.ts';
import { isJudged, judge, type Judged } from './judge.ts';

/** So many of the latest events are judged: older ones say little of the advice of today. */
const MOST = 1500;

/**
 * Holds what was thought against what came. What was thought is reckoned anew: the log is folded from its start, and before each event that settles something the advice is asked
 * as it would have been then, with what had been learned by then. Keeps what it has reckoned; where earlier events were corrected it begins again.
 */
export class Calibrator {
  readonly #advisor;
  readonly #known = new Map<string, Judged | null>();
  readonly #models: ReadonlyMap<string, Model>;
  #corrected = '';
  /** As the bench was before the event that is judged: models had grown so far. */
  #then: Readonly<BenchState> = emptyState();

  /** `shelf` are the models of the folders. */
  constructor(readonly shelf: ReadonlyMap<string, Model>) {
    this.#models = modelsWithGrown(shelf, () => this.#then);
    this.#advisor = createAdvisor(this.#models);
  }

  /** All that is judged by now. `shouldStop` ends the work for this time: ask again for the rest. */
  view(state: Readonly<BenchState>, log: readonly Stored[], shouldStop: () => boolean): CalibrationView {
    const corrected = [...state.corrected.keys(), ...state.putAway].join(' ');
    if (corrected !== this.#corrected) this.#known.clear();
    this.#corrected = corrected;
    const wanted = wantedOf(log);
    if ([...wanted].some((id) => !this.#known.has(id))) this.#reckon(log, wanted, shouldStop);
    return calibrationView(state, wanted, this.#known);
  }

  #reckon(log: readonly Stored[], wanted: ReadonlySet<string>, shouldStop: () => boolean): void {
    let stopped = false;
    foldLog(log, this.shelf, (before, event: BenchEvent) => {
      if (stopped || !wanted.has(event.id) || this.#known.has(event.id)) return;
      this.#then = before;
      this.#known.set(event.id, judge(this.#advisor, this.#models, before, event));
      stopped = shouldStop();
    });
    if (!stopped) for (const id of wanted) if (!this.#known.has(id)) this.#known.set(id, null);
  }
}

const wantedOf = (log: readonly Stored[]): ReadonlySet<string> =>
  new Set(log.flatMap(({ event }) => (!isForeign(event) && isJudged(event) ? [event.id] : [])).slice(-MOST));
