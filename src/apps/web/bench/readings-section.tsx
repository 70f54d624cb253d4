import { reading } from '../format/reading.ts';
import { Section } from '../ui/section.tsx';
import { useUnit } from './unit-context.ts';
import { TableScroll } from '../ui/table-scroll.tsx';

/** Every reading of this unit against good boards. */
export function ReadingsSection() {
  const { readings } = useUnit().file;
  if (readings.length === 0) return null;
  return (
    <Section id="readings" title="Readings">
      <TableScroll label="Readings">
        <thead>
          <tr>
            <th scope="col">Point</th>
            <th scope="col" className="num">
              Reading
            </th>
            <th scope="col">A good one</th>
            <th scope="col">Says</th>
          </tr>
        </thead>
        <tbody>
          {readings.map((each) => (
            <tr key={each.event_id}>
              <th scope="row">{each.name}</th>
              <td className="num">{reading(each.value, each.mode)}</td>
              <td>{each.reference ?? 'not measured yet'}</td>
              <td>{verdict(each.reference, each.sigmas)}</td>
            </tr>
          ))}
        </tbody>
      </TableScroll>
    </Section>
  );
}

/** What a distance from good boards says, in their spreads. */
export function verdict(reference: string | null, sigmas: number | null): string {
  if (reference === null) return 'no reference';
  if (sigmas === null) return 'not comparable';
  const size = Math.abs(sigmas);
  const far = size >= 100 ? 'over 100' : size.toFixed(1);
  if (size < 2) return `as good (${far} spreads off)`;
  const where = sigmas > 0 ? 'high' : 'low';
  return size < 4 ? `somewhat ${where} (${far} spreads)` : `${where} (${far} spreads)`;
}
