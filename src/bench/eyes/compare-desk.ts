import type { Bench } from '../bench.ts';
import type { BoardSide } from '../events/index.ts';
import type { Model } from '../models/index.ts';
import type { PhotoStore } from '../ports.ts';
import type { ComparisonView, JudgementView, JudgeQuestion, PhotoQuestion, ReferencesView } from '../views/index.ts';
import type { Comparing, ComparisonShelf, KeptComparison, PhotoComparer, PhotoComparison } from './comparer.ts';
import { frameOf, resultView, type Compared } from './comparison-view.ts';
import { judgementView } from './judgement-view.ts';
import { partPlaces } from './board-frame.ts';
import { problemOfComparison } from './picture-words.ts';
import { referencesOf, referenceUrl, type Reference } from './references.ts';

export interface CompareDeskParts {
  readonly bench: Pick<Bench, 'state' | 'model'>;
  readonly photos: Pick<PhotoStore, 'get'>;
  readonly comparer: PhotoComparer;
  readonly shelf: ComparisonShelf;
  /** Bytes of a photo that a model comes with, by its path. */
  readonly modelPhoto: (path: string) => Promise<Uint8Array>;
  /** Of the program: what an older one found is not taken for its own. */
  readonly version: string;
  /** Where unexpected errors go. */
  readonly log: (sentence: string, error: unknown) => void;
}

export type DeskRefusal = {
  readonly ok: false;
  readonly code: 'no-such-item' | 'no-such-model' | 'no-such-photo' | 'no-reference';
  readonly detail: string;
};
export type Asked<T> = { readonly ok: true; readonly view: T } | DeskRefusal;

/** Photos of boards, compared one after the other in the background. */
export interface CompareDesk {
  /** Begins a comparison, or finds it where it was made or begun before. */
  start(question: PhotoQuestion): Promise<Asked<ComparisonView>>;
  /** How far it is, with its result once it is ready; null where none of that key was begun. */
  progress(key: string): Promise<ComparisonView | null>;
  stop(key: string): Promise<ComparisonView | null>;
  /** Once it is ready, refused or stopped; null as `progress`. */
  settled(key: string): Promise<ComparisonView | null>;
  /** The compared photo as it lies on the reference, as JPEG; null where there is none. */
  laid(key: string): Promise<Uint8Array | null>;
  judge(question: JudgeQuestion): Promise<Asked<JudgementView>>;
  references(modelId: string): ReferencesView | null;
}

const SIDES: readonly BoardSide[] = ['board-front', 'board-back'];
/** Variations of a model that are looked up, the newest ones. */
const MOST_VARIATIONS = 24;
/** Comparisons whose stage is remembered; their results lie on the shelf. */
const MOST_JOBS = 60;

interface Job extends Compared {
  readonly key: string;
  readonly references: readonly Reference[];
  readonly variations: readonly { readonly photo: string; readonly outline: readonly [number, number][] }[];
  stage: ComparisonView['stage'];
  step: string | null;
  share: number;
  problem: ComparisonView['problem'];
  running: Comparing | null;
  done: Promise<void>;
}

export const openCompareDesk = (parts: CompareDeskParts): CompareDesk => new Desk(parts);

class Desk implements CompareDesk {
  private readonly jobs = new Map<string, Job>();
  /** Ends when the comparison before has ended: photos are read only when it is their turn, so that few of them are in memory. */
  private turn: Promise<void> = Promise.resolve();

  constructor(private readonly parts: CompareDeskParts) {}

  async start(question: PhotoQuestion): Promise<Asked<ComparisonView>> {
    const prepared = this.prepare(question);
    if ('ok' in prepared) return prepared;
    const before = this.jobs.get(prepared.key);
    if (before && before.stage !== 'stopped' && before.stage !== 'failed') return { ok: true, view: await this.view(before) };
    const kept = await this.parts.shelf.get(prepared.key);
    const job: Job = {
      ...prepared,
      stage: kept ? 'ready' : 'waiting',
      step: null,
      share: 0,
      problem: null,
      running: null,
      done: Promise.resolve(),
    };
    this.remember(job);
    if (!kept) this.turn = job.done = this.turn.then(() => this.work(job));
    return { ok: true, view: await this.view(job) };
  }

  async progress(key: string): Promise<ComparisonView | null> {
    const job = this.jobs.get(key);
    return job ? this.view(job) : null;
  }

  async stop(key: string): Promise<ComparisonView | null> {
    const job = this.jobs.get(key);
    if (!job) return null;
    if (job.stage === 'waiting' || job.stage === 'working') job.stage = 'stopped';
    job.running?.cancel();
    return this.view(job);
  }

  async settled(key: string): Promise<ComparisonView | null> {
    await this.jobs.get(key)?.done;
    return this.progress(key);
  }

  laid(key: string): Promise<Uint8Array | null> {
    return this.parts.shelf.laid(key);
  }

  async judge({ photo, model_id: modelId, side }: JudgeQuestion): Promise<Asked<JudgementView>> {
    const model = this.parts.bench.model(modelId);
    if (!model) return { ok: false, code: 'no-such-model', detail: modelId };
    const taken = await this.parts.photos.get(photo, 'original');
    if (!taken) return { ok: false, code: 'no-such-photo', detail: photo.slice(0, 12) };
    const [reference] = referencesOf(this.parts.bench.state(), model, side);
    const known = reference ? await this.bytesOf(reference, model, side) : null;
    const frame = reference ? frameOf({ question: { side }, model, reference }) : null;
    return { ok: true, view: judgementView(await this.parts.comparer.judge(taken.bytes, known), frame) };
  }

  references(modelId: string): ReferencesView | null {
    const model = this.parts.bench.model(modelId);
    if (!model) return null;
    const state = this.parts.bench.state();
    const sides = SIDES.map((side) => ({
      side,
      references: referencesOf(state, model, side).map((each) => ({
        photo: each.photo,
        url: referenceUrl(each, modelId, side),
        corners: each.corners,
      })),
    }));
    return { model_id: modelId, sides };
  }

  private prepare(question: PhotoQuestion): Omit<Job, 'stage' | 'step' | 'share' | 'problem' | 'running' | 'done'> | DeskRefusal {
    const state = this.parts.bench.state();
    const item = state.items.get(question.item_id);
    if (!item) return { ok: false, code: 'no-such-item', detail: question.item_id };
    const model = this.parts.bench.model(item.modelId);
    if (!model) return { ok: false, code: 'no-such-model', detail: item.modelId };
    if (!item.photos.some(({ hash }) => hash === question.photo))
      return { ok: false, code: 'no-such-photo', detail: question.photo.slice(0, 12) };
    const references = referencesOf(state, model, question.side).filter(({ photo }) => photo !== question.photo);
    const [reference] = references;
    if (!reference) return { ok: false, code: 'no-reference', detail: model.file.name };
    const variations = state.pictures.judged
      .filter(({ modelId, side, verdict }) => modelId === item.modelId && side === question.side && verdict === 'normal')
      .slice(-MOST_VARIATIONS)
      .map(({ photo, outline }) => ({ photo, outline }));
    const parts = model.circuit?.parts.map(({ ref, x, y, rotation, package: name }) => [ref, x, y, rotation, name]);
    const key = this.parts.shelf.keyOf(
      JSON.stringify([this.parts.version, question, model.file.id, model.photos, references, variations, parts]),
    );
    return { key, question, model, reference, references, variations };
  }

  private remember(job: Job): void {
    this.jobs.delete(job.key);
    this.jobs.set(job.key, job);
    for (const [key, { stage }] of this.jobs) {
      if (this.jobs.size <= MOST_JOBS) return;
      if (stage !== 'waiting' && stage !== 'working') this.jobs.delete(key);
    }
  }

  /** Never rejects: what goes wrong is a stage of the comparison. */
  private async work(job: Job): Promise<void> {
    if (job.stage === 'stopped') return;
    job.stage = 'working';
    try {
      job.running = await this.begin(job);
      // oxlint-disable-next-line typescript/no-unnecessary-condition -- it may have been stopped while the photos were read
      if ((job.stage as ComparisonView['stage']) === 'stopped') job.running.cancel();
      await this.end(job, await job.running.done);
    } catch (error) {
      job.stage = 'failed';
      job.problem = {
        code: 'unexpected',
        message: 'The comparison broke off. Start it again; if it breaks off once more, take the photo anew.',
      };
      this.parts.log('Photos could not be compared.', error);
    }
    job.running = null;
  }

  private async begin(job: Job): Promise<Comparing> {
    const { question, model } = job;
    const references = await Promise.all(job.references.map((each) => this.bytesOf(each, model, question.side)));
    const hashes = [...new Set(job.variations.map(({ photo }) => photo))];
    const originals = new Map(await Promise.all(hashes.map(async (hash) => [hash, await this.original(hash)] as const)));
    const variations = job.variations.map(({ photo, outline }) => ({ photo: originals.get(photo)!, outline }));
    const frame = frameOf(job);
    const other = await this.original(question.photo);
    const request = { references, other, variations, parts: frame ? partPlaces(model, question.side, frame) : [] };
    return this.parts.comparer.compare(request, (step, share) => {
      job.step = step;
      job.share = share;
    });
  }

  private async end(job: Job, result: PhotoComparison): Promise<void> {
    if (!result.ok) {
      job.stage = result.code === 'stopped' ? 'stopped' : 'refused';
      job.problem = problemOfComparison(result);
      return;
    }
    const { laid, ...kept } = result;
    await this.parts.shelf.put(job.key, kept satisfies KeptComparison, laid);
    job.stage = 'ready';
    job.share = 1;
  }

  private async bytesOf({ photo }: Reference, model: Model, side: BoardSide): Promise<Uint8Array> {
    const own = photo === 'shipped' ? model.photos.find((each) => each.side === side) : undefined;
    if (!own) return this.original(photo);
    return 'path' in own ? this.parts.modelPhoto(own.path) : this.original(own.hash);
  }

  private async original(hash: string): Promise<Uint8Array> {
    const found = await this.parts.photos.get(hash, 'original');
    if (!found) throw new Error(`photo ${hash} is not on the disk`);
    return found.bytes;
  }

  private async view(job: Job): Promise<ComparisonView> {
    const { key, question, stage, step, share, problem } = job;
    const kept = stage === 'ready' ? await this.parts.shelf.get(key) : null;
    const result = kept ? resultView(this.parts.bench.state(), key, kept, job) : null;
    return { key, question, stage, step, share, problem, result };
  }
}
