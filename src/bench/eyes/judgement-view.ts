import type { JudgementView } from '../views/index.ts';
import type { BoardFrame } from './board-frame.ts';
import type { PhotoJudgement } from './comparer.ts';
import { parallaxPx, poseView } from './comparison-view.ts';
import { poseAdvice, problemOfComparison, TROUBLE_WORDS } from './picture-words.ts';

/** A photo's judgement for the screen: good, or how to take it again. */
export function judgementView(judged: PhotoJudgement, frame: BoardFrame | null): JudgementView {
  if (!judged.ok) {
    const none = { sharpness: 0, brightness: 0, blinded_share: 0, troubles: [], pose: null, parallax_px: null, advice: [] };
    return { ...none, problem: problemOfComparison(judged), verdict: 'retake' };
  }
  const { quality, against } = judged;
  const pose = against?.ok ? against.pose : null;
  const problem = against && !against.ok ? problemOfComparison(against) : null;
  const held = pose ? poseAdvice(pose) : [];
  const advice = [
    ...quality.troubles.map((trouble) => TROUBLE_WORDS[trouble]),
    ...(held.length > 0 ? [`Hold it as for the reference: ${held.join('; ')}.`] : []),
  ];
  return {
    sharpness: Number(quality.sharpness.toFixed(3)),
    brightness: quality.brightness,
    blinded_share: Number(quality.blinded.toFixed(4)),
    troubles: [...quality.troubles],
    pose: pose && poseView(pose),
    parallax_px: pose && against?.ok ? parallaxPx(pose, frame, against.reference.width) : null,
    problem,
    verdict: problem || advice.length > 0 ? 'retake' : pose ? 'good' : 'alone',
    advice,
  };
}
