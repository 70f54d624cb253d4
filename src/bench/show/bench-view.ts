import type { BenchState } from '../state.ts';
import type { BenchView } from '../views/index.ts';

/** The bench at a glance: its settings, how much it holds, and what may still be set. */
export function benchView(
  state: Readonly<BenchState>,
  log: { readonly events: number; readonly version: string; readonly device: string },
): BenchView {
  const { settings } = state;
  return {
    name: settings.name,
    currency: settings.currency,
    hour_value_minor: settings.hourValueMinor,
    fee_percent: settings.feePercent,
    postage_out_minor: settings.postageOutMinor,
    fees: state.fees.map(({ place, fromDay, bands, fixedMinor, capMinor }) => ({
      place,
      from_day: fromDay,
      bands: bands.map(({ upToMinor, percent }) => ({ up_to_minor: upToMinor, percent })),
      fixed_minor: fixedMinor,
      cap_minor: capMinor,
    })),
    postage: state.postage.map(({ fromDay, bands }) => ({
      from_day: fromDay,
      bands: bands.map(({ upToG, priceMinor }) => ({ up_to_g: upToG, price_minor: priceMinor })),
    })),
    taught_words: [...state.taughtWords.values()],
    demo: state.demo,
    events: log.events,
    items: state.items.size,
    foreign_events: state.foreign.length,
    orphans: state.orphans.filter((orphan) => !orphan.demo).length,
    can_set_currency: state.journal.length === 0,
    version: log.version,
    device: log.device,
  };
}
