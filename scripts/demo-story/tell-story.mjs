import { gesturesOfSteps } from './open-and-close.mjs';
import { VERBS } from './verbs.mjs';

const LINE_MINUTES = 1;

/**
 * Tells a story to an empty bench, line by line, each line at its time; the bench's rules apply. `parts`: the bench, its
 * clock, the models and the hashes of the photos by name. Throws with the day and the line that cannot be told.
 */
export function tellStory(story, { bench, clock, models, photos }) {
  const { currency, start } = story.bench;
  const labels = new Map();
  const modeOf = (itemId, point) => {
    const modelId = bench.state().items.get(itemId)?.modelId;
    const found = models.get(modelId)?.file.points.find((each) => each.id === point);
    if (!found) throw new Error(`${modelId ?? itemId} has no point "${point}"`);
    return found.mode;
  };
  const context = { currency, labels, photos, modeOf };
  let day = new Date(`${start}T00:00:00Z`);
  record(bench, 'bench-set', settingsOf(story.bench));
  for (const chapter of story.story) {
    day = new Date(day.getTime() + (chapter.after_days ?? 0) * 86_400_000);
    clock.goTo(new Date(`${day.toISOString().slice(0, 10)}T${chapter.from}:00Z`));
    for (const line of chapter.diary)
      tellLine(line, { bench, clock, models, context, where: `${day.toISOString().slice(0, 10)}: ${JSON.stringify(line)}` });
  }
}

const settingsOf = ({ name, currency, hour_value, fee_percent, postage_out }) => ({
  name,
  currency,
  hour_value_minor: Math.round(hour_value * 100),
  fee_percent,
  postage_out_minor: Math.round(postage_out * 100),
});

function tellLine(line, { bench, clock, models, context, where }) {
  const verb = Object.keys(line).find((key) => key in VERBS);
  try {
    if (line.steps) return goBySteps(line, { bench, clock, models });
    if (!verb) throw new Error(`a line starts with steps or one of ${Object.keys(VERBS).join(', ')}`);
    clock.pass(Math.max(LINE_MINUTES, line.minutes ?? 0));
    if (line.prove === 'all') return proveAll(line, { bench, clock });
    const [kind, body] = VERBS[verb](line, context);
    const id = record(bench, kind, body);
    if (line.label) context.labels.set(line.label, id);
  } catch (error) {
    throw new Error(`The story cannot be told at ${where}\n  ${error.message}`, { cause: error });
  }
}

/** A unit opened or closed step by step, each at its time. */
function goBySteps(line, { bench, clock, models }) {
  for (const { minutes, events } of gesturesOfSteps(line, { bench, models })) {
    clock.pass(Math.max(LINE_MINUTES, minutes));
    for (const { kind, body } of events) record(bench, kind, body);
  }
}

/** Every step of proof that is still open, each with its minutes. */
function proveAll(line, { bench, clock }) {
  const minutes = line.minutes_each ?? 2;
  for (const step of bench.item(line.on).proof.steps.filter((each) => each.outcome === 'open')) {
    clock.pass(minutes);
    record(bench, 'proof-step-done', { item_id: line.on, step: step.id, outcome: 'pass', minutes });
  }
}

function record(bench, kind, body) {
  const result = bench.record([{ kind, body: JSON.parse(JSON.stringify(body)) }]);
  if (!result.ok) throw new Error(`${result.message} (${result.code}, ${result.field})`);
  return result.stored[0].id;
}
