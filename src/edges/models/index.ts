export { loadModels, type LoadedModels, type ModelFileProblem } from './load-models.ts';
