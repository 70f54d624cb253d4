import type { CompareRequest, Comparing, FoundDifference, PhotoComparer, PhotoComparison, PhotoJudgement } from '../comparer.ts';

const POSE = { turnDeg: 2, tiltRightDeg: 9, tiltDownDeg: -1, tiltDeg: 9.06, scale: 0.9 };
const AGREEMENT = { correlation: 0.9, fitting: 0.95, overlap: 1 };
const SIZE = { width: 1000, height: 750, toOriginal: 2 };

/** A square of 40 px at a place of the frame, as a difference. */
export function squareAt(x: number, y: number, more: Partial<FoundDifference> = {}): FoundDifference {
  const outline = [
    [x, y],
    [x + 40, y],
    [x + 40, y + 40],
    [x, y + 40],
  ] as const;
  return { outline, outlineThere: outline.map(([u, v]) => [u / 1000, v / 1000] as const), kind: 'missing', chance: 0.9, ...more };
}

/** What a comparison finds that finds these. */
export const finding = (...proposals: readonly FoundDifference[]): PhotoComparison => ({
  ok: true,
  reference: SIZE,
  other: SIZE,
  proposals,
  zones: [
    { reason: 'glare', left: 0, top: 0, right: 32, bottom: 32 },
    { reason: 'glare', left: 32, top: 0, right: 64, bottom: 32 },
    { reason: 'not-seen', left: 512, top: 512, right: 544, bottom: 544 },
  ],
  pose: POSE,
  agreement: AGREEMENT,
  used: { references: 1, variations: 0 },
  laid: new Uint8Array([255, 216]),
});

/** A comparer that remembers what it was asked, and answers when it is told to. */
export class ScriptedComparer implements PhotoComparer {
  readonly asked: CompareRequest[] = [];
  judgement: PhotoJudgement = {
    ok: true,
    quality: { sharpness: 0.5, brightness: 120, blinded: 0, black: 0, troubles: [] },
    against: { ok: true, pose: { ...POSE, tiltRightDeg: 0, tiltDownDeg: 0, tiltDeg: 0 }, reference: SIZE },
  };

  constructor(private readonly answer: (request: CompareRequest) => PhotoComparison | Promise<PhotoComparison>) {}

  compare(request: CompareRequest, progress?: Parameters<PhotoComparer['compare']>[1]): Comparing {
    this.asked.push(request);
    progress?.('aligning', 0.1);
    let cancel = (): void => undefined;
    const stopped = new Promise<PhotoComparison>((resolve) => {
      cancel = () => resolve({ ok: false, code: 'stopped' });
    });
    return { done: Promise.race([Promise.resolve(this.answer(request)), stopped]), cancel };
  }

  judge = async (): Promise<PhotoJudgement> => this.judgement;
  close = async (): Promise<void> => undefined;
}
