export { displayRefusalWords, displayTest, type DisplayPhoto } from './display-test.ts';
export { referenceTone, soundTest } from './sound-test.ts';
