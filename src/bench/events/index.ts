export * from './words.ts';
export { isNestedDeeperThan } from './nested.ts';
export * from './region.ts';
export { LandPattern } from './land-pattern.ts';
export * from './measured.ts';
export * from './model-bundle.ts';
export * from './model-kinds.ts';
export { BoardCorners, BoardSide } from './picture-kinds.ts';
export { BODIES, KINDS, type Body, type Kind } from './kinds.ts';
export {
  Envelope,
  EVENT_VERSION,
  isForeign,
  parseEvent,
  type AnyEvent,
  type BenchEvent,
  type EventOf,
  type EventProblem,
  type ForeignEvent,
  type Stored,
} from './event.ts';
