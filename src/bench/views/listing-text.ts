import { z } from 'zod';
import { Why } from './measures.ts';

export const ListingTextView = z
  .object({
    text: z.string(),
    facts: z
      .array(z.object({ text: z.string(), event_ids: z.array(z.string()) }))
      .meta({ description: 'What is said, and the events that bear it out' }),
    photos: z.array(z.object({ hash: z.string(), side: z.string(), caption: z.string() })),
    cautions: Why,
  })
  .meta({ id: 'ListingText' });
export type ListingTextView = z.infer<typeof ListingTextView>;
