import { useWatch } from '../api/queries.ts';
import { Answer } from '../ui/answer.tsx';
import { Section } from '../ui/section.tsx';
import { WatchLine } from './watch-line.tsx';

/** The listings that were kept, with what each is worth now. */
export function WatchSection() {
  const watch = useWatch();
  return (
    <Section id="watch" title="Watch list">
      <Answer query={watch}>
        {({ listings }) =>
          listings.length === 0 ? (
            <p className="muted">No listing is kept. One that you keep is weighed anew whenever your bench learns something.</p>
          ) : (
            <ul className="watch">
              {listings.map((listing) => (
                <WatchLine key={listing.id} listing={listing} />
              ))}
            </ul>
          )
        }
      </Answer>
    </Section>
  );
}
