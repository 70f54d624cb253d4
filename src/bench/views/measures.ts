import { z } from 'zod';

/** Shared by the answers of the open interface: money is minor units of the bench's currency unless `currency` stands beside it. */
export const Chance = z.number().min(0).max(1);
export const Money = z.number().int();

/** Lines of "why": plain words, made by the bench from numbers that stand beside them. */
export const Why = z.array(z.string());
