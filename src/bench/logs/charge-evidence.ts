import type { ChargeJudged } from '../../core/rework/index.ts';
import type { FindingKind, Outcome } from '../events/index.ts';
import type { ModelFile } from '../models/index.ts';

/** What a log of charging says of the device, as a trial or a finding that the diagnosis goes by. */
export type ChargeEvidence =
  | { readonly kind: 'trial'; readonly function: string; readonly name: string; readonly outcome: Outcome }
  | { readonly kind: 'finding'; readonly place: string; readonly name: string; readonly sees: FindingKind };

/** The evidence in a judged log; nothing of what the log does not tell, and nothing that the model has no name for. */
export const chargeEvidence = (judged: ChargeJudged, model: ModelFile): ChargeEvidence[] => [
  ...triedCharging(judged, model),
  ...wornCell(judged, model),
];

function triedCharging({ verdicts: { port, charger }, direction }: ChargeJudged, { functions }: ModelFile): ChargeEvidence[] {
  const fn = functions.find(({ id, name }) => /^(re)?charg/i.test(name) || /^(re)?charg/i.test(id));
  if (!fn || direction === 'discharge') return [];
  const outcome = outcomeOf(port.state, charger.state, port.reason === 'current-drops-out');
  return outcome === null ? [] : [{ kind: 'trial', function: fn.id, name: fn.name, outcome }];
}

function outcomeOf(port: string, charger: string, dropsOut: boolean): Outcome | null {
  if (dropsOut) return 'comes-and-goes';
  if (port === 'bad' || charger === 'bad') return 'fails';
  return port === 'good' && charger === 'good' ? 'works' : null;
}

const WORN: ReadonlySet<string> = new Set(['capacity-worn', 'capacity-spent', 'high-resistance']);

function wornCell({ verdicts: { cell } }: ChargeJudged, { blocks, slots }: ModelFile): ChargeEvidence[] {
  if (!WORN.has(cell.reason)) return [];
  const slot = slots.find(({ id, name }) => /batter|\bcells?\b/i.test(`${id} ${name}`));
  const block =
    blocks.find(({ assembly }) => slot && assembly === slot.id) ??
    blocks.find(({ id, name }) => /^(battery|cells?)$/i.test(id) || /\bcells?$/i.test(name));
  return block ? [{ kind: 'finding', place: block.id, name: block.name, sees: 'worn' }] : [];
}
