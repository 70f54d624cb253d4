import type { FactSection } from '../../../bench/events/index.ts';
import { useGrown } from './growth-context.ts';

interface FromWhereProps {
  readonly section: FactSection;
  readonly id: string;
  readonly field?: string;
}

/** Whether a place of a grown model is inherited, typed or measured, and by whom; nothing for a model of the folder. */
export function FromWhere({ section, id, field }: FromWhereProps) {
  const grown = useGrown();
  if (!grown) return null;
  const { source, author } = grown.sourceOf(section, id, field);
  return (
    <span className={`from-where from-${source}`}>
      {source}
      {author !== '' && ` by ${author}`}
    </span>
  );
}
