import { z } from 'zod';
import { Id, LandPattern } from '../events/index.ts';
import { ORDER_STATES } from '../stock/order-state.ts';
import { Road } from './advice.ts';
import { Chance, Money, Why } from './measures.ts';
import { ItemRow, Status } from './rows.ts';

export const PileView = z
  .object({
    currency: z.string(),
    counts: z.partialRecord(Status, z.number().int()),
    plan: z.array(
      z.object({
        row: ItemRow,
        advice_do: z.string(),
        headline: z.string(),
        road: Road,
        value_minor: Money,
        low_minor: Money.meta({ description: 'Tenth percentile' }),
        high_minor: Money.meta({ description: 'Ninetieth percentile' }),
        chance: Chance,
        minutes: z.number(),
        why: Why,
      }),
    ),
    value_minor: Money,
    minutes: z.number(),
  })
  .meta({ id: 'Pile' });
export type PileView = z.infer<typeof PileView>;

export const DrawerView = z
  .object({
    currency: z.string(),
    assemblies: z.array(z.object({ row: ItemRow, works_chance: Chance, from: z.string() })),
    bags: z.array(
      z.object({
        id: Id,
        part: Id,
        name: z.string(),
        place: z.string(),
        count: z.number().int(),
        cost_minor: Money,
        low: z.boolean().meta({ description: 'Too few to do the remedy that takes most of them twice' }),
        layers: z
          .array(z.object({ count: z.number().int(), cost_minor: Money }))
          .meta({ description: 'Bought one after another; the oldest leave first' }),
        pattern: LandPattern.nullable().meta({ description: 'Terminals of one of them' }),
      }),
    ),
    short: z
      .array(
        z.object({
          part: Id,
          name: z.string(),
          wanted: z.number().int().meta({ description: 'If every step of every repair is done' }),
          expected: z.number().meta({ description: 'On average: a later step is reached only when the earlier ones do not help' }),
          at_hand: z.number().int(),
          on_its_way: z.number().int(),
          short: z.number().int().meta({ description: 'Neither at hand nor on its way' }),
          for: z.array(z.string()),
        }),
      )
      .meta({ description: 'What the drawer lacks for the repairs that are planned, what is shortest on average first' }),
    orders: z.array(
      z.object({
        id: Id,
        supplier: z.string(),
        state: z.enum(ORDER_STATES),
        lines: z.array(z.object({ part: Id, name: z.string(), count: z.number(), price_minor: Money, came: z.number().int() })),
        cost_minor: Money,
        on_its_way_minor: Money.meta({ description: 'Paid for what may still come' }),
        placed_at: z.string(),
        due_day: z.string().nullable(),
        arrived_at: z.string().nullable().meta({ description: 'When the last of it came' }),
        cancelled_at: z.string().nullable(),
      }),
    ),
  })
  .meta({ id: 'Drawer' });
export type DrawerView = z.infer<typeof DrawerView>;

export const BooksView = z
  .object({
    currency: z.string(),
    units: z.array(
      z.object({
        row: ItemRow,
        cost_minor: Money,
        income_minor: Money,
        profit_minor: Money.nullable(),
        minutes: z.number(),
        profit_per_hour_minor: Money.nullable(),
      }),
    ),
    months: z.array(
      z.object({
        month: z.string(),
        bought_minor: Money.meta({ description: 'Paid for lots, parts and orders' }),
        sold_minor: Money.meta({ description: 'Prices and postage charged, less refunds' }),
        fees_minor: Money,
        postage_minor: Money.meta({ description: 'Paid to send what was sold, and for what came back' }),
        cost_of_sales_minor: Money,
        write_off_minor: Money,
        profit_minor: Money,
        units_sold: z.number().int(),
      }),
    ),
    stock_minor: Money,
    parts_minor: Money,
    on_order_minor: Money,
    cash_minor: Money,
    balanced: z.boolean().meta({ description: 'The ledger sums to zero, event by event' }),
  })
  .meta({ id: 'Books' });
export type BooksView = z.infer<typeof BooksView>;
