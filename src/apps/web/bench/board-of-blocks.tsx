import { useState } from 'react';
import { FINDING_WORDS, outcomeWords } from '../format/words.ts';
import { Section } from '../ui/section.tsx';
import { nameIn } from './answer-form.ts';
import { BlocksPicture } from './blocks-picture.tsx';
import { useUnit } from './unit-context.ts';

/** The board of a model by its blocks, with what is known of this one. */
export function BoardOfBlocks() {
  const { file, model } = useUnit();
  const probe = file.advice.check?.kind === 'measure' ? file.advice.check.target : null;
  const probed = model.points.find((point) => point.id === probe);
  const [picked, setPicked] = useState<'front' | 'back' | null>(null);
  const side = picked ?? probed?.side ?? 'front';
  if (model.board === undefined) return null;
  const chances = new Map(file.belief.blocks.map((block) => [block.id, block.chance]));
  const blocks = model.blocks.flatMap((block) =>
    block.at ? [{ id: block.id, text: block.name, at: block.at, chance: chances.get(block.id) ?? null }] : [],
  );
  const points = model.points.flatMap((point) =>
    point.at && point.side === side ? [{ id: point.id, text: point.name, at: point.at, probe: point.id === probe }] : [],
  );
  const findings = file.findings.flatMap((finding) => {
    const at = model.blocks.find((block) => block.id === finding.place)?.at;
    const isFault = finding.sees !== 'nothing-wrong' && finding.sees in FINDING_WORDS;
    return at && isFault ? [{ at, text: `${nameIn(model.blocks, finding.place)}: ${outcomeWords(finding.sees)}` }] : [];
  });
  return (
    <Section
      id="board"
      title="Board"
      aside={
        <button type="button" onClick={() => setPicked(side === 'front' ? 'back' : 'front')}>
          {side === 'front' ? 'Show the back' : 'Show the front'}
        </button>
      }
    >
      <BlocksPicture
        board={model.board}
        side={side}
        blocks={blocks}
        points={points}
        findings={findings}
        title={`The ${side} of the board of ${model.name}, ${model.board.width_mm} by ${model.board.height_mm} mm`}
      />
      <p className="small muted">
        {probed ? `The ring marks ${probed.name}, ${probed.side}. ` : ''}
        The darker a block, the likelier it is at fault.
        {findings.length > 0 && ` Crosses: ${findings.map((finding) => finding.text).join('; ')}.`}
      </p>
    </Section>
  );
}
