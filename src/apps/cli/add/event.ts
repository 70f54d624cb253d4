import { BODIES, KINDS, type Kind } from '../../../bench/events/index.ts';
import { misuse } from '../stop.ts';
import type { AddSpec } from './add-command.ts';

/** Any kind of event by its body, for what has no command of its own and for scripts. */
export const EVENT: AddSpec = {
  usage: 'event <kind> <json>',
  description: `any event by its body; kinds: ${KINDS.join(', ')}`,
  example: `salvor add event order-arrived '{"order_id":"order-12","place":"box 3"}'`,
  make: (_session, [kind = '', json = '']) => {
    if (!isKind(kind))
      throw misuse('bad-usage', { where: 'KIND', detail: `"${kind}" is not a kind of event; they are ${KINDS.join(', ')}` });
    return { drafts: [{ kind, body: bodyIn(json) }] };
  },
};

const isKind = (kind: string): kind is Kind => Object.hasOwn(BODIES, kind);

function bodyIn(json: string): Record<string, unknown> {
  try {
    return JSON.parse(json) as Record<string, unknown>;
  } catch {
    throw misuse('bad-usage', { where: 'JSON', detail: 'The body is not JSON: check its brackets and quotation marks' });
  }
}
