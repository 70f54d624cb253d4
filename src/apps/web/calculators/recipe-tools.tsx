import { Link } from 'wouter';
import type { RemedyView } from '../../../bench/views/index.ts';
import { useNets } from '../api/queries.ts';
import { useUnit } from '../bench/unit-context.ts';
import { reading } from '../format/reading.ts';

/** Calculators that a recipe needs, by its name. */
const TOOLS: Readonly<Record<string, readonly { readonly tool: string; readonly label: string }[]>> = {
  'repair-track-wire': [
    { tool: 'wire', label: 'Reckon the wire' },
    { tool: 'fusing', label: 'How far from melting' },
  ],
  'repair-track-foil': [
    { tool: 'track-current', label: 'Reckon the width of the foil' },
    { tool: 'resistance', label: 'Reckon its resistance' },
  ],
  'replace-two-terminal': [{ tool: 'part-code', label: 'Read the mark' }],
  'replace-cell': [{ tool: 'run-time', label: 'How long it will last' }],
};

interface RecipeToolsProps {
  readonly recipe: string | null;
  /** Parts that the work is done to: the worst current of their nets is filled in. */
  readonly spots: RemedyView['spots'];
}

/** Links to the calculators of a recipe, with the worst current of the nets at hand where a circuit knows it. */
export function RecipeTools({ recipe, spots }: RecipeToolsProps) {
  const { model, parts } = useUnit();
  const refs = new Set(spots.map(({ ref }) => ref));
  const hands = new Set(parts.filter(({ ref }) => refs.has(ref)).flatMap(({ pads }) => pads.map(({ net }) => net)));
  const nets = useNets(refs.size > 0 ? model.id : '').data ?? [];
  const worst = nets.find(({ net }) => hands.has(net));
  const tools = TOOLS[recipe ?? ''];
  if (!tools) return null;
  const filled = worst ? `&model=${model.id}&net=${encodeURIComponent(worst.net)}&current_a=${Number(worst.current_a.toPrecision(3))}` : '';
  return (
    <div>
      <p className="row">
        {tools.map(({ tool, label }) => (
          <Link key={tool} href={`/calculators?tool=${tool}${filled}`} className="button">
            {label}
          </Link>
        ))}
      </p>
      {worst && (
        <p className="small muted">
          The worst current there is {reading(worst.current_a, 'amps')} on {worst.net.toUpperCase()}: {worst.state}.
        </p>
      )}
    </div>
  );
}
