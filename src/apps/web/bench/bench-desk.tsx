import { useCallback, useMemo, useState } from 'react';
import { BeliefSection } from './belief-section.tsx';
import { BenchHead } from './bench-head.tsx';
import { BoardSection } from './board-section.tsx';
import { InsteadContext } from './instead-context.ts';
import { DecisionSection } from './decision-section.tsx';
import { NextLink } from './next-link.tsx';
import { LeavingSection } from './leaving-section.tsx';
import { LogSection } from './log-section.tsx';
import { MoneySection } from './money-section.tsx';
import { OtherSection } from './other-section.tsx';
import { PhotosSection } from './photos-section.tsx';
import { ProofSection } from './proof-section.tsx';
import { ReadingsSection } from './readings-section.tsx';
import { SlotsSection } from './slots-section.tsx';
import { TestsSection } from './tests-section.tsx';
import { CircuitProgress } from './circuit-progress.tsx';
import { TeachSection } from './teach-section.tsx';
import { useFocusOnNewAdvice } from './use-focus-on-new-advice.ts';
import { useUnit } from './unit-context.ts';
import { WhatNext } from './what-next.tsx';

/** The desk: what next at the left and always in sight, all that is known of the unit at the right; on a phone one below the other. */
export function BenchDesk() {
  const { file } = useUnit();
  useFocusOnNewAdvice(file.advice.id);
  const [instead, setInstead] = useState<{ id: string | null; advice: string } | null>(null);
  const id = instead?.advice === file.advice.id ? instead.id : null;
  const choose = useCallback((to: string | null) => setInstead({ id: to, advice: file.advice.id }), [file.advice.id]);
  const chosen = useMemo(() => ({ id, choose }), [id, choose]);
  return (
    <InsteadContext value={chosen}>
      <BenchHead />
      <NextLink />
      <div className="desk">
        <div className="desk-next" id="what-next-desk">
          <CircuitProgress />
          <WhatNext key={file.advice.id} />
        </div>
        <div className="desk-rest">
          <BeliefSection />
          <DecisionSection />
          <BoardSection />
          <OtherSection />
          <ReadingsSection />
          <TeachSection />
          <TestsSection />
          <PhotosSection />
          <LogSection />
          <SlotsSection />
          <ProofSection />
          <LeavingSection />
          <MoneySection />
        </div>
      </div>
    </InsteadContext>
  );
}
