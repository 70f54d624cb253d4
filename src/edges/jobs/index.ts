export { openBossQueue } from './boss-queue.ts';
export { openOwnQueue } from './own-queue.ts';
