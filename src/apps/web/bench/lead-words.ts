import type { LeadView } from '../../../bench/views/index.ts';

/** "C25 pin 1"; a test point has only one. */
export const leadWords = ({ ref, pin }: LeadView['pads'][number]): string => (/^TP\d/i.test(ref) ? ref : `${ref} pin ${pin}`);
