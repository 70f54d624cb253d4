export { Calibrator } from './calibrator.ts';
