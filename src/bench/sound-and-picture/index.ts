export { colourTest, coloursTest, referenceColour } from './colour-test.ts';
export { displayRefusalWords, displayTest, type DisplayPhoto } from './display-test.ts';
export { referenceTone, soundTest } from './sound-test.ts';
