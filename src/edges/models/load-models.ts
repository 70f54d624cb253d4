import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import {
  fieldText,
  problem,
  readingsFrom,
  resolveModels,
  type Model,
  type ModelFile,
  type ModelProblem,
  type ReferenceReading,
} from '../../bench/models/index.ts';
import { readCsv } from './read-csv.ts';
import { loadCircuit } from './load-circuit.ts';
import { codeOf, MOST_BYTES, readText } from './read-text.ts';
import { readYaml, type YamlText } from './read-yaml.ts';

/** What is wrong with a file of a model: where, and what to do next. The words form a sentence: "file:line field message. next". */
export interface ModelFileProblem {
  readonly ok: false;
  readonly code: ModelProblem['code'];
  readonly model: string;
  /** Path of the file, below the folder that was handed over. */
  readonly file: string;
  readonly line: number;
  readonly column: number;
  /** Such as `faults.3.block`, or a column of the readings; "the file" for all of it. */
  readonly field: string;
  readonly message: string;
  readonly next: string;
}

export interface LoadedModels {
  /**
   * By id, in order of id. A model whose own file is faulty is not here; one with faulty readings is, without those lines; one whose
   * circuit is faulty is, without it and at level 1.
   */
  readonly models: Map<string, Model>;
  readonly problems: ModelFileProblem[];
}

const MODEL = 'model.yaml';
const READINGS = 'readings.csv';
const PHOTO = /^([a-z0-9][a-z0-9-]*)\.(?:jpe?g|png|webp)$/;

/**
 * All models below a folder, each in `<id>/model.yaml` with `readings.csv` and `photos/<side>.jpg|png|webp` beside it.
 * A fault in one is told with its file, line and field, and the others are loaded all the same.
 */
export async function loadModels(dir: string): Promise<LoadedModels> {
  const problems: ModelFileProblem[] = [];
  const texts = new Map<string, YamlText>();
  for (const id of await foldersIn(dir, problems)) {
    const read = await readModelText(dir, id);
    texts.set(id, read);
    if (!read.ok) problems.push(...read.problems.map((each) => inModelFile(id, each, each)));
  }
  const sources = new Map([...texts].map(([id, text]) => [id, text.ok ? text.value : null]));
  const resolved = resolveModels(sources);
  for (const [id, found] of resolved.problems) {
    const text = texts.get(id)!;
    if (text.ok) problems.push(...found.map((each) => inModelFile(id, each, text.placeOf(each.path))));
  }
  const models = new Map<string, Model>();
  for (const [id, file] of resolved.files) {
    const circuit = await circuitOf(dir, id, file, texts.get(id)!, problems);
    const shared = { readings: await readingsOf(dir, id, file, problems), photos: await photosOf(dir, id) };
    models.set(id, circuit ? { file, ...shared, circuit } : { file: withoutCircuit(file), ...shared });
  }
  return { models, problems };
}

async function foldersIn(dir: string, problems: ModelFileProblem[]): Promise<string[]> {
  try {
    const entries = await readdir(dir, { withFileTypes: true });
    return entries
      .filter((entry) => entry.isDirectory() && !entry.name.startsWith('.'))
      .map(({ name }) => name)
      .sort();
  } catch (error) {
    const message = `cannot be read as a folder of models (${codeOf(error)})`;
    problems.push({
      ...at(dir, 1, 1),
      model: '',
      code: 'model-unreadable',
      field: 'the folder',
      message,
      next: 'Point to a folder that holds <id>/model.yaml.',
    });
    return [];
  }
}

async function readModelText(dir: string, id: string): Promise<YamlText> {
  const read = await readText(join(dir, id, MODEL));
  if (read.ok) return readYaml(read.text);
  const failed = read.code === 'model-too-large' ? tooLarge() : unreadable(read.why);
  return { ok: false, problems: [{ ...failed, line: 1, column: 1 }] };
}

const tooLarge = (): ModelProblem =>
  problem(
    'model-too-large',
    [],
    `is larger than ${MOST_BYTES / 2 ** 20} MiB`,
    'Keep pictures and readings in files of their own beside it.',
  );

const unreadable = (why: string): ModelProblem =>
  problem(
    'model-unreadable',
    [],
    `cannot be read (${why})`,
    `Every folder of a model holds a ${MODEL}; add it, or move the folder elsewhere.`,
  );

async function readingsOf(dir: string, id: string, file: ModelFile, problems: ModelFileProblem[]): Promise<readonly ReferenceReading[]> {
  const read = await readText(join(dir, id, READINGS));
  const name = join(id, READINGS);
  if (!read.ok) {
    if (read.why !== 'ENOENT')
      problems.push({
        ...at(name, 1, 1),
        model: id,
        code: read.code,
        field: 'the file',
        message: `cannot be read (${read.why})`,
        next: 'Save it as plain UTF-8 text of at most 2 MiB.',
      });
    return [];
  }
  const { rows, commaIsDecimal } = readCsv(read.text);
  const found = readingsFrom(rows, file, commaIsDecimal);
  problems.push(...found.problems.map(({ line, ...each }) => ({ ...each, ...at(name, line, 1), model: id })));
  return found.readings;
}

/** The circuit of a model at level 2, or nothing and what is wrong with it. */
async function circuitOf(
  dir: string,
  id: string,
  file: ModelFile,
  yaml: YamlText,
  problems: ModelFileProblem[],
): Promise<Model['circuit']> {
  if (!file.circuit) return undefined;
  const loaded = await loadCircuit(join(dir, id), file, file.circuit);
  if (loaded.ok) return loaded.circuit;
  problems.push(...loaded.problems.map(({ file: name, ...each }) => ({ ...each, model: id, file: join(id, name) })));
  if (yaml.ok) problems.push(...loaded.inModelFile.map((each) => inModelFile(id, each, yaml.placeOf(each.path))));
  return undefined;
}

const withoutCircuit = (file: ModelFile): ModelFile => (file.level === 2 ? { ...file, level: 1, circuit: undefined } : file);

async function photosOf(dir: string, id: string): Promise<Model['photos']> {
  const folder = join(dir, id, 'photos');
  const names = await readdir(folder).catch(() => []);
  return [...names].sort().flatMap((name) => {
    const side = PHOTO.exec(name)?.[1];
    return side === undefined ? [] : [{ side, path: join(folder, name) }];
  });
}

const at = (file: string, line: number, column: number): { ok: false; file: string; line: number; column: number } => ({
  ok: false,
  file,
  line,
  column,
});

const inModelFile = (
  id: string,
  { code, path, message, next }: ModelProblem,
  place: { line: number; column: number },
): ModelFileProblem => ({
  ...at(join(id, MODEL), place.line, place.column),
  code,
  model: id,
  field: fieldText(path),
  message,
  next,
});
