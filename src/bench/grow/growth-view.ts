import { fieldText, type Model } from '../models/index.ts';
import type { GrowthView, PooledPointView, ToldPlace } from '../views/index.ts';
import { buildModel, type Shelf } from './build-model.ts';
import type { GrownFact, GrownModel, Told } from './grown-model.ts';
import { lastWords } from './last-words.ts';
import { pooledPoints } from './pooled-points.ts';
import { ANY_PLAYER } from './start-file.ts';

/** How a model of this bench grew, for pages and programs. */
export function growthView(grown: GrownModel, shelf: Shelf): GrowthView {
  const built = buildModel(grown, shelf);
  return {
    model_id: grown.id,
    version: grown.version,
    from: startOf(grown, shelf),
    begun_at: grown.begun.at,
    places: [...answeredOf(grown), ...placesOf(grown.facts)],
    photos: (['front', 'back'] as const).flatMap((side) => {
      const photo = grown.photos[side];
      return photo ? [{ side, photo: photo.photo, scale: photo.scale, mirror: photo.mirror, ...toldOf(photo) }] : [];
    }),
    parts: [...grown.parts.values()].map(({ eventId: _id, ...part }) => ({ ...part, ...toldOf({ ...part, eventId: _id }) })),
    joins: grown.joins.map((join) => ({ pins: [...join.pins], joined: join.joined, ...toldOf(join) })),
    net_names: grown.names.map((name) => ({ pin: name.pin, name: name.name, ...toldOf(name) })),
    netlist: grown.netlist && { text: grown.netlist.text, from: grown.netlist.from, ...toldOf(grown.netlist) },
    readings: grown.readings.map(({ board, revision, point, mode, value, itemId, ...told }) => ({
      board,
      revision,
      point,
      mode,
      value,
      item_id: itemId,
      ...toldOf(told),
    })),
    step_photos: grown.stepPhotos.map(({ step, photo, places, ...told }) => ({
      step,
      photo,
      places: places.map(([x, y]): [number, number] => [x, y]),
      ...toldOf(told),
    })),
    fits: grown.fits.map(({ slot, otherModelId, part, outcome, itemId, ...told }) => ({
      slot,
      other_model_id: otherModelId,
      part,
      outcome,
      item_id: itemId,
      ...toldOf(told),
    })),
    taken: grown.taken.map(({ licence, facts, ...told }) => ({ licence, facts, ...toldOf(told) })),
    left_out: (built?.leftOut ?? []).map(({ fact, problem }) => ({
      place: placeText(fact),
      why: `${fieldText(problem.path)} ${problem.message}`,
      event_id: fact.eventId,
    })),
    circuit_problems: [...(built?.circuitProblems ?? [])],
  };
}

/** What known-good boards show at each point, by boards and revisions. */
export const pooledView = (model: Model): PooledPointView[] =>
  pooledPoints(model).map(({ point, reference, boards, revisions, sameChance, differs }) => ({
    point: point.id,
    name: point.name,
    mode: point.mode,
    middle: reference?.mean ?? null,
    spread: reference?.spread ?? 0,
    boards: boards.map((board) => ({ ...board })),
    revisions: revisions.map((each) => ({ ...each, boards: [...each.boards] })),
    same_chance: sameChance,
    differs,
  }));

const toldOf = ({ author, at, eventId }: Told) => ({ author, at, event_id: eventId });

const placeText = ({ section, id, field }: Pick<GrownFact, 'section' | 'id' | 'field'>): string =>
  [...(section === 'head' ? [] : [section]), id, ...(field === null ? [] : [field])].join(' ');

function startOf({ from }: GrownModel, shelf: Shelf): GrowthView['from'] {
  if ('file' in from) return { kind: 'bundle', model_id: null, name: 'the file of a bundle' };
  const id = 'copy_of' in from ? from.copy_of : ANY_PLAYER;
  return { kind: 'copy_of' in from ? 'copy' : 'answers', model_id: id, name: shelf.get(id)?.file.name ?? id };
}

/** The cell stands in one of the six answers. */
function answeredOf({ from, begun }: GrownModel): ToldPlace[] {
  if (!('answers' in from) || from.answers.cell_volts === null || from.answers.power === 'mains-supply') return [];
  return [{ section: 'head', id: 'cell', field: 'volts', value: from.answers.cell_volts, source: 'typed', ...toldOf(begun) }];
}

const placesOf = (facts: readonly GrownFact[]): ToldPlace[] =>
  lastWords(facts).map(({ section, id, field, value, source, ...told }) => ({ section, id, field, value, source, ...toldOf(told) }));
