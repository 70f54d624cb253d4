import { useState } from 'react';
import { NextBody } from './next-body.tsx';
import { NextCheck } from './next-check.tsx';
import { NextRemedy } from './next-remedy.tsx';
import { RunnersUp } from './runners-up.tsx';
import { useUnit } from './unit-context.ts';
import { Why } from '../ui/why.tsx';

/** The card that says what to do now, why, and takes the outcome at once. */
export function WhatNext() {
  const { advice } = useUnit().file;
  const [insteadId, setInsteadId] = useState<string | null>(null);
  const check = advice.other_checks.find((each) => each.id === insteadId);
  const remedy = advice.other_remedies.find((each) => each.id === insteadId);
  const isOwnChoice = check !== undefined || remedy !== undefined;
  return (
    <section className="sheet next" id="what-next" aria-labelledby="what-next-title what-next-headline" tabIndex={-1}>
      <header>
        <h2 id="what-next-title" className="eyebrow">
          {isOwnChoice ? 'Your choice' : 'What next'}
        </h2>
        <p className="headline" id="what-next-headline">
          {check?.name ?? remedy?.name ?? advice.headline}
        </p>
      </header>
      {!isOwnChoice && advice.why[0] !== undefined && <p className="small">{advice.why[0]}</p>}
      {check && <NextCheck key={check.id} check={check} saysWhy />}
      {remedy && <NextRemedy key={remedy.id} remedy={remedy} saysWhy />}
      {!isOwnChoice && <NextBody />}
      {!isOwnChoice && <Why lines={advice.why} summary="Why this, in full" />}
      {isOwnChoice ? (
        <button type="button" className="quiet" onClick={() => setInsteadId(null)}>
          Back to the advice
        </button>
      ) : (
        <RunnersUp choose={setInsteadId} />
      )}
    </section>
  );
}
