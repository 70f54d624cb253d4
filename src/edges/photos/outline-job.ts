import type { OutlineQuestion, PhotoOutlines } from '../../bench/ports.ts';
import { outlinesOnPhoto } from './outlines-on-photo.ts';

/** What the worker thread is asked. */
export interface OutlineTask {
  readonly photo: Uint8Array;
  readonly question: OutlineQuestion;
}

export default ({ photo, question }: OutlineTask): Promise<PhotoOutlines> => outlinesOnPhoto(photo, question);
