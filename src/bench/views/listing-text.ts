import { z } from 'zod';
import { Why } from './measures.ts';

export const ListingTextView = z
  .object({
    text: z.string(),
    facts: z
      .array(z.object({ text: z.string(), event_ids: z.array(z.string()) }))
      .meta({ description: 'What is said, and the events that bear it out' }),
    template: z.string().meta({ description: 'The own words, with places in braces' }),
    places: z.array(z.object({ place: z.string(), text: z.string() })).meta({ description: 'Every place, and what it stands for here' }),
    own_claims: z.array(z.string()).meta({ description: 'Words of the template that claim something which no event bears out' }),
    photos: z.array(z.object({ hash: z.string(), side: z.string(), caption: z.string() })),
    photos_missing: z.array(z.string()).meta({ description: 'Sides of the photo set that there is no photo of' }),
    weight_g: z.object({ unit: z.number(), packed: z.number() }).nullable().meta({ description: 'About; weigh the parcel' }),
    postage_minor: z.number().int().meta({ description: 'What it costs to send, by the own table or as usual' }),
    currency: z.string(),
    cautions: Why,
  })
  .meta({ id: 'ListingText' });
export type ListingTextView = z.infer<typeof ListingTextView>;
