import { findRing } from './find-ring.ts';
import { knownHere, problem, type ModelProblem } from './problem.ts';
import type { ModelFile } from './schema.ts';

/** What does not hang together in the steps of opening and the fasteners: rings, steps that can never be done, what is freed that is not there, places beside their panel. */
export function stepProblems(file: ModelFile): ModelProblem[] {
  const ring = stepCycle(file);
  return [...ring, ...(ring.length > 0 ? [] : neverDone(file)), ...freesUnknown(file), ...offPanel(file)];
}

/** The first ring of steps that wait for each other, said once. */
function stepCycle({ steps }: ModelFile): ModelProblem[] {
  const after = new Map(steps.map((step) => [step.id, step.after]));
  const ring = findRing(
    steps.map(({ id }) => id),
    (id) => after.get(id) ?? [],
  );
  if (!ring) return [];
  const index = steps.findIndex(({ id }) => id === ring[0]);
  return [
    problem(
      'model-cycle',
      ['steps', index, 'after'],
      `waits for itself: ${[...ring, ring[0]].join(' after ')}`,
      'Take one `after` out of the ring.',
    ),
  ];
}

/** Steps that can never be done, since all alternatives of theirs wait for them; the first is told. */
function neverDone({ steps }: ModelFile): ModelProblem[] {
  const known = new Set(steps.map(({ id }) => id));
  const can = new Set<string>();
  const ready = (step: ModelFile['steps'][number]): boolean =>
    step.after.every((id) => can.has(id) || !known.has(id)) &&
    step.after_any.every((any) => any.some((id) => can.has(id) || !known.has(id)));
  for (let before = -1; before !== can.size;) {
    before = can.size;
    for (const step of steps) if (ready(step)) can.add(step.id);
  }
  const index = steps.findIndex(({ id }) => !can.has(id));
  if (index < 0) return [];
  const message = 'can never be done: each alternative waits for it, straight or through others';
  return [
    problem('model-cycle', ['steps', index, 'after_any'], message, 'Add an alternative that does not wait for it, or take the need out.'),
  ];
}

function freesUnknown(file: ModelFile): ModelProblem[] {
  const known = new Set([...file.blocks, ...file.slots].map(({ id }) => id));
  return file.steps.flatMap(({ frees }, i) =>
    frees.flatMap((name, j) => {
      if (known.has(name)) return [];
      const message = `names "${name}", which is neither in blocks nor in slots`;
      return [
        problem('model-unknown-name', ['steps', i, 'frees', j], message, `Correct the name, or take it out. ${knownHere(name, known)}`),
      ];
    }),
  );
}

function offPanel({ fasteners, panels }: ModelFile): ModelProblem[] {
  return fasteners.flatMap(({ at, count, panel }, i) => {
    if (at.length === 0) return [];
    if (panel === undefined)
      return [problem('model-fasteners', ['fasteners', i, 'at'], 'gives places, but no panel', 'Name the `panel` that the places are on.')];
    if (at.length > count)
      return [
        problem(
          'model-fasteners',
          ['fasteners', i, 'at'],
          `gives ${at.length} places for ${count}`,
          'Correct the count, or take places out.',
        ),
      ];
    const face = panels.find(({ id }) => id === panel);
    const j = face ? at.findIndex(([x, y]) => x < 0 || y < 0 || x > face.width_mm || y > face.height_mm) : -1;
    if (j < 0) return [];
    const message = `lies beside the panel: ${at[j]!.join(', ')} mm on ${face!.width_mm} × ${face!.height_mm} mm`;
    return [problem('model-fasteners', ['fasteners', i, 'at', j], message, 'Measure it from the lower left corner of the panel, in mm.')];
  });
}
