import { RECIPES } from '../recipes/index.ts';
import { circuitProblems } from './circuit-names.ts';
import { stepProblems } from './step-problems.ts';
import { knownHere, problem, type ModelProblem } from './problem.ts';
import type { ModelFile } from './schema.ts';

type Path = ModelProblem['path'];

/** The sections whose entries have ids, and the word for one entry. */
const SECTIONS = {
  blocks: 'block',
  slots: 'slot',
  functions: 'function',
  faults: 'fault',
  accessories: 'accessory',
  points: 'point',
  checks: 'check',
  remedies: 'remedy',
  parts: 'part',
  panels: 'panel',
  fasteners: 'fastener',
  steps: 'step',
} as const;
type Section = keyof typeof SECTIONS;

/**
 * Everything in a well-shaped model file that does not hang together: ids given twice, names of entries that do not
 * exist, checks that are not exactly one kind, transplants without a slot, chances of behaviour that do not sum to 1,
 * places beside the board, steps that wait for each other, a circuit that names what the file does not have.
 */
export function crossProblems(file: ModelFile): ModelProblem[] {
  const sections = Object.keys(SECTIONS) as Section[];
  return [
    ...sections.flatMap((section) => duplicates(file, section)),
    ...namesUsed(file).flatMap(({ section, name, path }) => unknownName(file, section, name, path)),
    ...file.checks.flatMap(checkKind),
    ...file.remedies.flatMap(transplantSlot),
    ...file.remedies.flatMap(unknownRecipe),
    ...file.faults.flatMap(behavesSum),
    ...offBoard(file),
    ...stepProblems(file),
    ...circuitProblems(file),
  ];
}

function duplicates(file: ModelFile, section: Section): ModelProblem[] {
  const first = new Map<string, number>();
  return file[section].flatMap(({ id }, index) => {
    const before = first.get(id);
    if (before === undefined) first.set(id, index);
    return before === undefined ? [] : [duplicate(section, id, index, before)];
  });
}

const duplicate = (section: Section, id: string, index: number, before: number): ModelProblem =>
  problem(
    'model-duplicate-id',
    [section, index, 'id'],
    `gives the id "${id}" a second time; entry ${before + 1} of ${section} has it already`,
    `Give one of the two ${SECTIONS[section]} entries another id, or take it out.`,
  );

interface NameUsed {
  readonly section: Section;
  readonly name: string;
  readonly path: Path;
}

/** Every place of the file that names an entry of another section. */
function namesUsed(file: ModelFile): NameUsed[] {
  const used: NameUsed[] = [];
  const note = (section: Section, name: string | undefined, path: Path): void => {
    if (name !== undefined) used.push({ section, name, path });
  };
  file.blocks.forEach((block, i) => note('slots', block.assembly, ['blocks', i, 'assembly']));
  file.functions.forEach(({ needs }, i) =>
    needs.forEach((need, j) => {
      if (typeof need === 'string') note('blocks', need, ['functions', i, 'needs', j]);
      else need.any.forEach((block, k) => note('blocks', block, ['functions', i, 'needs', j, 'any', k]));
    }),
  );
  file.faults.forEach((fault, i) => {
    note('blocks', fault.block, ['faults', i, 'block']);
    Object.keys(fault.shifts).forEach((point) => note('points', point, ['faults', i, 'shifts', point]));
  });
  file.accessories.forEach(({ block }, i) => note('blocks', block, ['accessories', i, 'block']));
  file.points.forEach(({ block }, i) => note('blocks', block, ['points', i, 'block']));
  file.checks.forEach((check, i) => {
    note('functions', check.try, ['checks', i, 'try']);
    note('blocks', check.look, ['checks', i, 'look']);
    note('points', check.measure, ['checks', i, 'measure']);
    check.with.forEach((accessory, j) => note('accessories', accessory, ['checks', i, 'with', j]));
  });
  file.remedies.forEach((remedy, i) => {
    Object.keys(remedy.mends).forEach((fault) => note('faults', fault, ['remedies', i, 'mends', fault]));
    remedy.parts.forEach(({ part }, j) => note('parts', part, ['remedies', i, 'parts', j, 'part']));
    note('slots', remedy.slot, ['remedies', i, 'slot']);
  });
  file.steps.forEach((step, i) => {
    step.after.forEach((before, j) => note('steps', before, ['steps', i, 'after', j]));
    step.after_any.forEach((any, j) => any.forEach((before, k) => note('steps', before, ['steps', i, 'after_any', j, k])));
    step.look_for.forEach(({ at }, j) => note('blocks', at, ['steps', i, 'look_for', j, 'at']));
    note('fasteners', step.fasteners, ['steps', i, 'fasteners']);
  });
  file.fasteners.forEach(({ panel }, i) => note('panels', panel, ['fasteners', i, 'panel']));
  return used;
}

function unknownName(file: ModelFile, section: Section, name: string, path: Path): ModelProblem[] {
  const ids = file[section].map(({ id }) => id);
  if (ids.includes(name)) return [];
  const message = `names the ${SECTIONS[section]} "${name}", which is not in ${section}`;
  return [problem('model-unknown-name', path, message, `Correct the name, or add it to ${section}. ${knownHere(name, ids)}`)];
}

function checkKind(check: ModelFile['checks'][number], index: number): ModelProblem[] {
  const kinds = (['try', 'look', 'measure'] as const).filter((kind) => check[kind] !== undefined);
  const path = ['checks', index];
  if (kinds.length !== 1) {
    const found = kinds.length === 0 ? 'none of them' : kinds.join(' and ');
    return [
      problem(
        'model-check-kind',
        path,
        `needs exactly one of try, look, measure; it has ${found}`,
        'Keep one, and make another check of the rest.',
      ),
    ];
  }
  if (check.with.length > 0 && kinds[0] !== 'try')
    return [
      problem(
        'model-check-kind',
        [...path, 'with'],
        'stands in a check that tries nothing',
        'Only a check with `try` uses accessories: take `with` out.',
      ),
    ];
  return [];
}

function transplantSlot(remedy: ModelFile['remedies'][number], index: number): ModelProblem[] {
  if ((remedy.kind === 'transplant') === (remedy.slot !== undefined)) return [];
  const message = remedy.slot === undefined ? 'is a transplant that names no slot' : `names a slot, but its kind is ${remedy.kind}`;
  return [problem('model-transplant-slot', ['remedies', index], message, 'A transplant has a `slot`, and nothing else has one.')];
}

function unknownRecipe({ recipe }: ModelFile['remedies'][number], index: number): ModelProblem[] {
  if (recipe === undefined || RECIPES.has(recipe)) return [];
  const message = `names the recipe "${recipe}", which is not among the written ones`;
  const next = `Correct the name, or take it out. ${knownHere(recipe, RECIPES.keys())}`;
  return [problem('model-unknown-name', ['remedies', index, 'recipe'], message, next)];
}

/** Chances that are written by hand with two or three digits still sum to 1 within this. */
const SUM_TOLERANCE = 1e-6;

function behavesSum({ behaves }: ModelFile['faults'][number], index: number): ModelProblem[] {
  if (!behaves) return [];
  const sum = behaves.works + behaves.comes_and_goes + behaves.fails;
  if (Math.abs(sum - 1) <= SUM_TOLERANCE) return [];
  const message = `must sum to 1; works + comes_and_goes + fails is ${Number(sum.toFixed(6))}`;
  return [
    problem(
      'model-behaves-sum',
      ['faults', index, 'behaves'],
      message,
      'Change the three chances, or leave `behaves` out to take what is usual for the mode.',
    ),
  ];
}

function offBoard(file: ModelFile): ModelProblem[] {
  const { board } = file;
  if (!board) return [];
  return (['blocks', 'points'] as const).flatMap((section) =>
    file[section].flatMap(({ at }, index) => {
      if (!at || (at[0] >= 0 && at[0] <= board.width_mm && at[1] >= 0 && at[1] <= board.height_mm)) return [];
      const message = `lies beside the board: ${at[0]}, ${at[1]} mm on ${board.width_mm} × ${board.height_mm} mm`;
      return [problem('model-off-board', [section, index, 'at'], message, 'Measure it from the lower left corner of the front, in mm.')];
    }),
  );
}
