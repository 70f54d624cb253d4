import { useMemo, type ReactNode } from 'react';
import { sourceOfPlaces } from '../../../bench/grow/place-source.ts';
import { useGrowth } from '../api/queries.ts';
import { Answer } from '../ui/answer.tsx';
import { GrowthContext } from './growth-context.ts';

/** Tells all below it how the model of the page grew. */
export function GrownModel({ id, children }: { readonly id: string; readonly children: ReactNode }) {
  const query = useGrowth(id);
  return (
    <Answer query={query}>
      {({ growth, points }) => (
        <Within growth={growth} points={points}>
          {children}
        </Within>
      )}
    </Answer>
  );
}

type WithinProps = NonNullable<ReturnType<typeof useGrowth>['data']> & { readonly children: ReactNode };

function Within({ growth, points, children }: WithinProps) {
  const value = useMemo(() => growth && { growth, points, sourceOf: sourceOfPlaces(growth.places) }, [growth, points]);
  return <GrowthContext value={value}>{children}</GrowthContext>;
}
