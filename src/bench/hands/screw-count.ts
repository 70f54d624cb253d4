import { fastenerCount, type Counted } from '../../core/teardown/index.ts';
import type { FindingKind } from '../events/index.ts';
import type { ModelFile } from '../models/index.ts';

export interface ScrewFinding {
  readonly set: string;
  readonly sees: Extract<FindingKind, 'missing' | 'opened-before'>;
  readonly text: string;
}

export interface ScrewCount {
  readonly even: boolean;
  /** Each place that was opened holds what belongs there. */
  readonly whole: boolean;
  readonly sets: readonly (ReturnType<typeof fastenerCount>['sets'][number] & { readonly name: string })[];
  /** To be recorded as findings: each is a sign that somebody was in there before. */
  readonly findings: readonly ScrewFinding[];
  readonly shopping: readonly { readonly set: string; readonly text: string; readonly count: number; readonly priceMinor: number | null }[];
}

/** What came out against what goes in, in the words of the model: the count, findings, and what to buy. */
export function screwCount(file: Pick<ModelFile, 'fasteners'>, out: readonly Counted[], back: readonly Counted[]): ScrewCount {
  const count = fastenerCount(file.fasteners, out, back);
  const counted = new Set(out.map(({ set }) => set));
  const sets = count.sets.map((each) => ({ ...each, name: file.fasteners.find(({ id }) => id === each.set)?.name ?? each.set }));
  const opened = sets.filter(({ set }) => counted.has(set));
  return {
    even: count.even,
    whole: opened.every(({ toBuy, back: put, belongs }) => toBuy === 0 && put === belongs),
    sets,
    findings: opened.flatMap(({ set, name, missing, foreign }): ScrewFinding[] => [
      ...(missing > 0 ? [{ set, sees: 'missing' as const, text: `${missing} missing of: ${name}` }] : []),
      ...(foreign > 0 ? [{ set, sees: 'opened-before' as const, text: `${foreign} of another kind among: ${name}` }] : []),
    ]),
    shopping: opened
      .filter(({ toBuy }) => toBuy > 0)
      .map(({ set, name, toBuy }) => {
        const spec = file.fasteners.find(({ id }) => id === set)!;
        return { set, text: `${name}: ${spec.drive}, ${spec.length_mm} mm`, count: toBuy, priceMinor: spec.price ?? null };
      }),
  };
}
