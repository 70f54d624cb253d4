import { proofOf } from '../advice/proof.ts';
import { lifeOf } from '../advice/life.ts';
import { GRADE_MEANS, gradeByScale, MARKS, SCALE_1, type CriterionId, type Grade } from '../grading/index.ts';
import type { LiveLog } from '../live/live-log.ts';
import type { Model } from '../models/index.ts';
import { keptAndReplaced } from '../selling/kept-and-replaced.ts';
import type { Item } from '../state.ts';
import { cellCautions } from './cell-cautions.ts';
import { photosAroundWork } from './photos-around-work.ts';
import type { ReportGrade, ReportView } from './report-view.ts';
import { TEST_NAMES } from './test-names.ts';
import { valueWords } from './value-words.ts';

/** All that a buyer should know of the condition of a unit; `url` is where the file of the unit is opened. */
export function conditionReport({ state, byItem }: LiveLog, model: Model, item: Item, url: string): ReportView {
  const proof = proofOf(item, model, lifeOf(item, state.items));
  const { slots, parts, work } = keptAndReplaced(state, model, item);
  const log = byItem.get(item.id) ?? [];
  return {
    title: `Condition report: ${model.file.name}`,
    unit: `#${item.number} ${item.name}`,
    bench: state.settings.name,
    day: (log.at(-1)?.event.at ?? state.newestAt).slice(0, 10),
    grade: item.grade && gradeOf(item.grade),
    photos: photosAroundWork(item, log, state.corrected),
    parts: slots.map(({ name, holds, itemName }) => ({ name, state: stateWords(holds, itemName) })),
    replaced: [
      ...new Set(parts.map(({ name }) => name)),
      ...item.costs.filter(({ reason }) => reason === 'part').map(({ text }) => `From the drawer: ${text}`),
    ],
    work: [...new Set(work.map(({ name }) => name))],
    ready: proof.ready,
    tests: proof.steps.map(({ name, outcome, limits, measured, reason }) => ({ name, outcome, limits, measured, reason })),
    measured: item.tests
      .filter(({ beforeWork, test }) => !beforeWork || test === 'heat-log')
      .map(({ test, verdict, text, values }) => ({ name: TEST_NAMES[test], verdict, text, values: values.map(valueWords) })),
    cautions: cellCautions(model, item),
    url,
  };
}

const stateWords = (holds: 'its-own' | 'another' | 'nothing', itemName: string): string =>
  holds === 'its-own' ? 'its own' : holds === 'nothing' ? 'missing' : `of another one: ${itemName}`;

function gradeOf({ grade, scale, text, judged }: NonNullable<Item['grade']>): ReportGrade {
  const { criteria, open } = gradeByScale(SCALE_1, Object.fromEntries(judged.map(({ criterion, value }) => [criterion, value])));
  const spec = (id: CriterionId) => SCALE_1.criteria.find((criterion) => criterion.id === id)!;
  const found = (id: CriterionId, value: number): string =>
    (id === 'marks' ? MARKS[value] : undefined) ?? `${Number(value.toPrecision(3))} ${spec(id).unit}`;
  return {
    grade,
    means: Object.hasOwn(GRADE_MEANS, grade) ? GRADE_MEANS[grade as Grade] : '',
    scale,
    text,
    criteria: criteria.map(({ id, value, grade: reached }) => ({ name: spec(id).name, found: found(id, value), grade: reached })),
    open: open.map((id) => spec(id).name),
  };
}
