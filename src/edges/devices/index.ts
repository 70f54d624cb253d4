export { openDeviceBook } from './device-book.ts';
