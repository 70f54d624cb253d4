import { useOutOfSight } from './use-out-of-sight.ts';
import { useUnit } from './unit-context.ts';

/** Back to the card, from wherever one has scrolled; there only while the card is out of sight. */
export function NextLink() {
  const { advice } = useUnit().file;
  if (!useOutOfSight('what-next-desk')) return null;
  return (
    <a href="#what-next" className="next-link">
      <b>Next:</b> {advice.headline}
    </a>
  );
}
