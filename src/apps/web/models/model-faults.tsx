import type { ModelFile } from '../../../bench/models/index.ts';
import { chance } from '../format/number.ts';
import { FromWhere } from '../grow/from-where.tsx';
import { Section } from '../ui/section.tsx';
import { Bar } from '../ui/bar.tsx';

/** Blocks and the functions that need them; faults by how often a faulty one has them. */
export function ModelFaults({ file }: { readonly file: ModelFile }) {
  const names = new Map(file.blocks.map((block) => [block.id, block.name]));
  const nameOf = (id: string): string => names.get(id) ?? id;
  return (
    <>
      <Section id="functions" title="Functions and what they need">
        <ul className="plain-list">
          {file.functions.map((each) => (
            <li key={each.id}>
              <b>{each.name}</b>:{' '}
              {each.needs.map((need) => (typeof need === 'string' ? nameOf(need) : need.any.map(nameOf).join(' or '))).join(', ')}{' '}
              <FromWhere section="functions" id={each.id} />
            </li>
          ))}
        </ul>
      </Section>
      <Section id="faults" title="Faults" aside="how often one sold as faulty has it">
        <div>
          {file.faults
            .toSorted((a, b) => b.rate - a.rate)
            .map((fault) => (
              <Bar
                key={fault.id}
                label={
                  <>
                    {fault.name.includes(nameOf(fault.block)) ? fault.name : `${fault.name} (${nameOf(fault.block)})`}{' '}
                    <FromWhere section="faults" id={fault.id} field="rate" />
                  </>
                }
                value={fault.rate}
              />
            ))}
        </div>
        <p className="small muted">Something that this list does not hold: {chance(file.unknown_rate)}.</p>
      </Section>
    </>
  );
}
