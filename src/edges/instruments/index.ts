export { openInstruments, type InstrumentLimits } from './open-instruments.ts';
