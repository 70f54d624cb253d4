import type { BenchView } from '../../../bench/views/index.ts';
import { counted } from '../format/number.ts';
import { Section } from '../ui/section.tsx';

/** What this is, and the state of the log. */
export function AboutSection({ bench }: { readonly bench: BenchView }) {
  return (
    <Section id="about" title="About">
      <p>
        Salvor {bench.version}: from “one who saves goods from wreck”. All data stay on this machine ({bench.device}); nothing is sent
        anywhere.
      </p>
      <p className="small muted">
        {counted(bench.events, 'event')}, {counted(bench.items, 'item')}
        {bench.foreign_events > 0 && `, ${counted(bench.foreign_events, 'event')} from a newer version, kept but not understood here`}
        {bench.orphans > 0 && `, ${counted(bench.orphans, 'event')} about something that is not on this bench, kept and not counted`}. The
        open interface is described at <a href="/openapi.json">/openapi.json</a>.
      </p>
    </Section>
  );
}
