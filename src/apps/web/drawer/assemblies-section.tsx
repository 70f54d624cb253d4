import { Link } from 'wouter';
import type { DrawerView } from '../../../bench/views/index.ts';
import { money } from '../format/money.ts';
import { Bar } from '../ui/bar.tsx';
import { Section } from '../ui/section.tsx';
import { StockTag } from '../ui/stock-tag.tsx';

/** Boards, displays, shells … that lie ready, with the chance that each works. */
export function AssembliesSection({ drawer }: { readonly drawer: DrawerView }) {
  return (
    <Section id="assemblies" title="Assemblies">
      {drawer.assemblies.length === 0 ? (
        <p className="muted">None lies in the drawer. Take one out of a unit on its bench, under “What it holds”.</p>
      ) : (
        <ul className="plain-list">
          {drawer.assemblies.map(({ row, works_chance, from }) => (
            <li key={row.id} className="drawer-line">
              <Link href={`/bench/${encodeURIComponent(row.id)}`}>
                <StockTag number={row.number} /> {row.name}
              </Link>
              <span className="small muted">
                {from !== '' && `from ${from} · `}carries {money(row.cost_minor, drawer.currency)}
              </span>
              <Bar label="works" value={works_chance} />
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}
