import { z } from 'zod';
import { BODIES } from '../events/index.ts';
import { Money, Why } from './measures.ts';

export const TaxView = z
  .object({
    currency: z.string(),
    from: z.string(),
    to: z.string(),
    rules: z.array(BODIES['tax-rule-set']).meta({ description: 'The rules in use at the end of the period' }),
    stock_book: z.array(
      z.object({
        number: z.number().int(),
        bought_on: z.string(),
        sold_on: z.string(),
        purchase_invoice: z.string(),
        sale_invoice: z.string(),
        seller: z.string(),
        buyer: z.string(),
        description: z.string(),
        purchase_minor: Money,
        sale_minor: Money.nullable(),
        disposal: z.string().meta({ description: 'How it left when it was not sold' }),
        margin_minor: Money.nullable(),
        tax_minor: Money.nullable(),
      }),
    ),
    each: z.object({ tax_minor: Money }).nullable(),
    together: z
      .object({
        months: z.array(
          z.object({
            month: z.string(),
            sales_minor: Money,
            purchases_minor: Money,
            margin_minor: Money,
            carried_forward_minor: Money,
            tax_minor: Money,
          }),
        ),
        tax_minor: Money,
        left_out: z.number().int().meta({ description: 'Things dearer than the limit of the rule; they go one by one' }),
      })
      .nullable(),
    small_trader: z
      .object({
        income_minor: Money,
        costs_minor: Money,
        allowance_minor: Money,
        within: z.boolean(),
        with_allowance_minor: Money,
        with_costs_minor: Money,
        lower: z.enum(['allowance', 'costs']),
        left_minor: Money,
      })
      .nullable(),
    why: Why,
  })
  .meta({ id: 'Tax' });
export type TaxView = z.infer<typeof TaxView>;
