import type { ComponentProps } from 'react';
import type { ModelFile } from '../../../bench/models/index.ts';
import { money } from '../format/money.ts';
import { chance, duration } from '../format/number.ts';
import { STAGE_WORDS } from '../format/words.ts';
import { FromWhere } from '../grow/from-where.tsx';
import { Cautions } from '../ui/cautions.tsx';
import { Fold } from '../ui/fold.tsx';
import { Section } from '../ui/section.tsx';

/** Checks, remedies and slots: what one can do with it. */
export function ModelWork({ file }: { readonly file: ModelFile }) {
  const faultNames = new Map(file.faults.map((fault) => [fault.id, fault.name]));
  const partNames = new Map(file.parts.map((part) => [part.id, part.name]));
  return (
    <>
      <Section id="checks" title="Checks">
        <div>
          {file.checks.map((check) => (
            <Fold
              key={check.id}
              title={
                <WorkTitle
                  from={{ section: 'checks', id: check.id }}
                  name={check.name}
                  minutes={check.minutes}
                  stage={STAGE_WORDS[check.stage]}
                />
              }
            >
              <div className="form">
                {check.how !== '' && <p>{check.how}</p>}
                <Cautions cautions={check.cautions} />
              </div>
            </Fold>
          ))}
        </div>
      </Section>
      <Section id="remedies" title="Remedies">
        <div>
          {file.remedies.map((remedy) => (
            <Fold
              key={remedy.id}
              title={
                <WorkTitle
                  from={{ section: 'remedies', id: remedy.id }}
                  name={remedy.name}
                  minutes={remedy.minutes}
                  stage={STAGE_WORDS[remedy.stage]}
                />
              }
            >
              <div className="form">
                {remedy.how !== '' && <p>{remedy.how}</p>}
                <Cautions cautions={remedy.cautions} />
                <p>
                  Removes:{' '}
                  {Object.entries(remedy.mends)
                    .map(([fault, odds]) => `${faultNames.get(fault) ?? fault} (${chance(odds)})`)
                    .join(', ')}
                  . Ruins the unit: {remedy.risk === 0 ? 'not expected' : chance(remedy.risk)}.
                </p>
                {remedy.parts.length > 0 && (
                  <p>Takes {remedy.parts.map((part) => `${part.count} × ${partNames.get(part.part) ?? part.part}`).join(', ')}.</p>
                )}
              </div>
            </Fold>
          ))}
        </div>
      </Section>
      {file.slots.length > 0 && (
        <Section id="slots" title="Assemblies">
          <ul className="plain-list">
            {file.slots.map((slot) => (
              <li key={slot.id}>
                <b>{slot.name}</b>: a working one is worth {money(slot.value, file.currency)}, changing it takes {duration(slot.minutes)}
                {slot.original_matters && '; a unit with its own one sells for more'}
                {slot.fits.length > 0 && `; those of ${slot.fits.join(', ')} fit`} <FromWhere section="slots" id={slot.id} />
                <Cautions cautions={slot.cautions} />
              </li>
            ))}
          </ul>
        </Section>
      )}
    </>
  );
}

interface WorkTitleProps {
  readonly name: string;
  readonly minutes: number;
  readonly stage: string;
  readonly from: ComponentProps<typeof FromWhere>;
}

function WorkTitle({ name, minutes, stage, from }: WorkTitleProps) {
  return (
    <>
      {name}{' '}
      <span className="small muted">
        {duration(minutes)}, {stage.toLowerCase()}
      </span>{' '}
      <FromWhere {...from} />
    </>
  );
}
