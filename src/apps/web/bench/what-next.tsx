import { useContext } from 'react';
import { InsteadContext, useAtHand } from './instead-context.ts';
import { NextBody } from './next-body.tsx';
import { NextCheck } from './next-check.tsx';
import { NextRemedy } from './next-remedy.tsx';
import { RunnersUp } from './runners-up.tsx';
import { useUnit } from './unit-context.ts';
import { Why } from '../ui/why.tsx';

/** The card that says what to do now, why, and takes the outcome at once. */
export function WhatNext() {
  const { advice } = useUnit().file;
  const { choose } = useContext(InsteadContext);
  const { check, remedy, isOwnChoice } = useAtHand();
  const own = isOwnChoice ? { check, remedy } : null;
  return (
    <section className="sheet next" id="what-next" aria-labelledby="what-next-title what-next-headline" tabIndex={-1}>
      <header>
        <h2 id="what-next-title" className="eyebrow">
          {isOwnChoice ? 'Your choice' : 'What next'}
        </h2>
        <p className="headline" id="what-next-headline">
          {own?.check?.name ?? own?.remedy?.name ?? advice.headline}
        </p>
      </header>
      {!isOwnChoice && advice.why[0] !== undefined && <p className="small">{advice.why[0]}</p>}
      {own?.check && <NextCheck key={own.check.id} check={own.check} saysWhy />}
      {own?.remedy && <NextRemedy key={own.remedy.id} remedy={own.remedy} saysWhy />}
      {!isOwnChoice && <NextBody />}
      {!isOwnChoice && <Why lines={advice.why} summary="Why this, in full" />}
      {isOwnChoice ? (
        <button type="button" className="quiet" onClick={() => choose(null)}>
          Back to the advice
        </button>
      ) : (
        <RunnersUp choose={choose} />
      )}
    </section>
  );
}
