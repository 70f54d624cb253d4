import type { DrawerView } from '../../../bench/views/index.ts';
import { Section } from '../ui/section.tsx';
import { TableScroll } from '../ui/table-scroll.tsx';

/** What the drawer lacks for the repairs that are planned. */
export function ShortSection({ drawer: { short } }: { readonly drawer: DrawerView }) {
  if (short.length === 0) return null;
  return (
    <Section id="short" title="Running short">
      <p className="small muted">
        The repairs that are best now may take more of these than the drawer holds. On average they take less, since a later step is come to
        only when the earlier ones do not help. Nothing is ordered by itself.
      </p>
      <TableScroll label="Parts that run short">
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col">At most</th>
            <th scope="col">On average</th>
            <th scope="col">Here</th>
            <th scope="col">On its way</th>
            <th scope="col">To order</th>
            <th scope="col">For</th>
          </tr>
        </thead>
        <tbody>
          {short.map((part) => (
            <tr key={part.part}>
              <th scope="row">{part.name}</th>
              <td>{part.wanted}</td>
              <td>{part.expected.toFixed(1)}</td>
              <td>{part.at_hand}</td>
              <td>{part.on_its_way}</td>
              <td>{part.short}</td>
              <td>{part.for.join(', ')}</td>
            </tr>
          ))}
        </tbody>
      </TableScroll>
    </Section>
  );
}
