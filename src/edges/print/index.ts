export { openPrinter } from './printer.ts';
