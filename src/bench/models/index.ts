export * from './schema.ts';
export { fieldText, problem, type ModelProblem, type ModelProblemCode } from './problem.ts';
export { resolveModels, type ResolvedModels } from './resolve.ts';
export { readingsFrom, type CsvRow, type ReadingsProblem } from './readings-csv.ts';
export { modelJsonSchema } from './json-schema.ts';
