import { degreesApart, seenAt } from '../../scripts/render-boards/index.mjs';
import {
  atStrictness,
  compare,
  placeInOther,
  type Comparison,
  type Homography,
  type PictureLibrary,
  type Proposal,
} from '../../src/core/vision/index.ts';
import { quantile, round, type Figure, type Progress } from './figure.ts';
import { plainProposals } from './vision-plain.ts';
import type { Box } from './vision-defects.ts';
import { renderedPair, type RenderedPair } from './vision-render-pairs.ts';
import { RENDERED_FAULTS, renderPlans, type BoardPlan, type PhotoPlan } from './vision-render-set.ts';
import { drawRenders } from './vision-renders.ts';
import { meets } from './vision-score.ts';

const FIRST = { recall: 10, precision: 5 };
/** What the Bench shows at first. */
const DEFAULT_STRICTNESS = 0.3;
/** Limits of the plain pipeline's grey difference, loosest last; it is asked for where its recall is .8. */
const PLAIN_LIMITS = [90, 75, 62, 52, 44, 37, 31, 26, 22, 18, 15, 12, 10, 8];
const PLAIN_RECALL = 0.8;

/** What one set of pairs gave. */
class Seen {
  pairs = 0;
  refused = 0;
  faults = 0;
  found = 0;
  false = 0;
  foundFirst = 0;
  rightFirst = 0;
  named = { right: 0, asked: 0 };
  readonly poseErrors: number[] = [];
  readonly alignErrors: number[] = [];

  add({ pair, plans }: RenderedPair, result: ReturnType<typeof compare>): void {
    this.pairs++;
    this.faults += pair.truth.length;
    if (!result.ok) {
      this.refused++;
      return;
    }
    const truth = pair.truth.map(({ box }) => box);
    const shown = atStrictness(result.proposals, DEFAULT_STRICTNESS);
    this.found += foundBy(shown, truth);
    this.false += shown.filter((each) => !isReal(each, truth)).length;
    this.foundFirst += foundBy(result.proposals.slice(0, FIRST.recall), truth);
    this.rightFirst += result.proposals.slice(0, FIRST.precision).filter((each) => isReal(each, truth)).length;
    this.name(shown, plans.other, truth);
    this.poseErrors.push(Math.abs(result.alignment.pose.tiltDeg - degreesApart(plans.reference.camera, plans.other.camera)));
    this.alignErrors.push(...alignErrorsOf(result, plans.reference, plans.other));
  }

  private name(shown: readonly Proposal[], other: PhotoPlan, truth: readonly Box[]): void {
    other.faults.forEach(({ fault, ref }, i) => {
      const hit = ['gone', 'moved', 'bridged'].includes(fault) && shown.find((each) => meets(boxOf(each), truth[i]!));
      if (!hit) return;
      this.named.asked++;
      if (hit.part === ref) this.named.right++;
    });
  }

  get recall(): number {
    return this.found / Math.max(1, this.faults);
  }
}

const boxOf = ({ box: { left, top, right, bottom } }: Proposal): Box => [left, top, right, bottom];
const foundBy = (proposals: readonly Proposal[], truth: readonly Box[]): number =>
  truth.filter((box) => proposals.some((each) => meets(boxOf(each), box))).length;
const isReal = (proposal: Proposal, truth: readonly Box[]): boolean => truth.some((box) => meets(boxOf(proposal), box));

/** Distances, px of a photo 2000 px wide, at the flat marks of the board (test points, key contacts, vias, holes), against where the cameras truly see them. */
export function alignErrorsOf({ alignment }: Pick<Comparison, 'alignment'>, { board, camera }: PhotoPlan, other: PhotoPlan): number[] {
  const marks = [...board.parts.filter(({ kind }) => ['TP', 'KEY-2'].includes(kind)), ...board.vias, ...board.holes];
  return marks.map(({ x, y }) => {
    const [u, v] = placeInOther(alignment, ...seenAt(camera, [x, y, 0]));
    const [tu, tv] = seenAt(other.camera, [x, y, 0]);
    return (Math.hypot(u - tu, v - tv) * 2000) / other.camera.width / alignment.pose.scale;
  });
}

type See = (seen: Seen, references: readonly PhotoPlan[], other: PhotoPlan) => Promise<void>;

/** The figures on drawn photos of boards that nothing was tuned on; none where there is no Chromium to draw them. */
export async function renderFigures(library: PictureLibrary, progress: Progress): Promise<Figure[]> {
  const plans = renderPlans('measuring');
  if (!(await drawRenders(plans, progress))) {
    progress('There is no Chromium to draw boards with: the figures on drawn photos are left out. Set SALVOR_CHROMIUM to its path.');
    return [];
  }
  const [guided, clean1, clean5, free, scan] = [new Seen(), new Seen(), new Seen(), new Seen(), new Seen()];
  const plain = new PlainTally();
  for (const plan of plans) {
    progress(`Comparing drawn photos of ${plan.board.name} …`);
    const see: See = async (seen, references, other) => {
      const rendered = await renderedPair(references, other);
      const result = compare(rendered.references, rendered.pair.other, library, { parts: rendered.parts });
      seen.add(rendered, result);
      if (result.ok && seen === free) plain.add(rendered, result.alignment.h);
    };
    await seeGuided(plan, see, { guided, clean1, clean5 });
    for (const other of plan.free) await see(free, [plan.references[0]!], other);
    for (const other of plan.scans) await see(scan, [plan.scanReference], other);
  }
  return figuresOf({ guided, clean1, clean5, free, scan }, plain);
}

async function seeGuided(
  { references, guided, clean }: BoardPlan,
  see: See,
  seen: Record<'guided' | 'clean1' | 'clean5', Seen>,
): Promise<void> {
  for (const other of guided) await see(seen.guided, [references[0]!], other);
  for (const other of clean) await see(seen.clean1, [references[0]!], other);
  await see(seen.clean5, references, clean[0]!);
}

/** The plain pipeline over many pairs, at each of its limits. */
class PlainTally {
  private readonly found = PLAIN_LIMITS.map(() => 0);
  private readonly false = PLAIN_LIMITS.map(() => 0);
  private faults = 0;
  private pairs = 0;

  add({ pair }: RenderedPair, h: Homography): void {
    const truth = pair.truth.map(({ box }) => box);
    this.pairs++;
    this.faults += truth.length;
    plainProposals(pair.reference, pair.other, h, PLAIN_LIMITS).forEach((boxes, i) => {
      this.found[i]! += truth.filter((box) => boxes.some((each) => meets(each, box))).length;
      this.false[i]! += boxes.filter((each) => !truth.some((box) => meets(each, box))).length;
    });
  }

  /** Between the two limits that the recall lies between, by a straight line; at the best recall where it is never reached. */
  get atRecall(): { recall: number; falsePerPair: number } {
    const best = Math.max(...this.found);
    const wanted = Math.min(best, PLAIN_RECALL * this.faults);
    const at = this.found.findIndex((found) => found >= wanted);
    const before = Math.max(0, at - 1);
    const share = at === 0 ? 1 : (wanted - this.found[before]!) / (this.found[at]! - this.found[before]!);
    const falses = this.false[before]! + share * (this.false[at]! - this.false[before]!);
    return { recall: wanted / this.faults, falsePerPair: falses / this.pairs };
  }
}

function figuresOf(
  { guided, clean1, clean5, free, scan }: Record<'guided' | 'clean1' | 'clean5' | 'free' | 'scan', Seen>,
  plain: PlainTally,
): Figure[] {
  const answered = free.pairs - free.refused;
  const named = [guided, free].reduce((sum, { named: { right, asked } }) => ({ right: sum.right + right, asked: sum.asked + asked }), {
    right: 0,
    asked: 0,
  });
  const rule = `found: overlap over union ≥ .2, or its middle in the true box and at most four times as large; ${RENDERED_FAULTS} faults a pair, on parts and off them`;
  const figure = (name: string, value: number, unit: string, target: string, reference: string): Figure => ({
    figure: `vision.${name}`,
    value: round(value),
    unit,
    target,
    reference,
  });
  return [
    figure(
      'render_recall',
      guided.recall,
      '',
      '≥ 0.9',
      `${guided.pairs} drawn pairs of four boards that nothing was tuned on, each photo of another specimen, ≤ 3° apart, same lamps; default strictness, one known-good photo, parts known; ${guided.found} of ${guided.faults} found, ${round(guided.false / guided.pairs)} false a pair, ${guided.refused} refused; ${rule}`,
    ),
    figure(
      'render_false1',
      clean1.false / Math.max(1, clean1.pairs - clean1.refused),
      '',
      '≤ 4',
      `false proposals a clean pair with one known-good photo, ${clean1.pairs} pairs, ${clean1.refused} refused`,
    ),
    figure(
      'render_false5',
      clean5.false / Math.max(1, clean5.pairs - clean5.refused),
      '',
      '≤ 1',
      `the same with five, ${clean5.pairs} pairs, ${clean5.refused} refused`,
    ),
    figure(
      'render_free_r10',
      free.foundFirst / free.faults,
      '',
      '≥ 0.8',
      `recall within the first ten; ${free.pairs} pairs ≤ 15° apart, lamp moved, one known-good photo; ${free.refused} refused, which count as missed; on real pairs with parts known, in a trial: .69`,
    ),
    figure(
      'render_free_p5',
      free.rightFirst / (FIRST.precision * Math.max(1, answered)),
      '',
      '≥ 0.8',
      `precision within the first five, same pairs, the refused left out; in a trial on real pairs: .75`,
    ),
    figure(
      'render_plain_false',
      plain.atRecall.falsePerPair,
      '',
      'shown',
      `false boxes a pair that a plain classical pipeline raises on the same pairs at a recall of ${round(plain.atRecall.recall)}; on real pairs, in a trial: 85 to 110 at .8`,
    ),
    figure(
      'render_scan_f1',
      (2 * scan.found) / (scan.found + scan.false + scan.faults),
      '',
      '≥ 0.96',
      `${scan.pairs} drawn flat scans, no perspective, fixed light, dust; ${scan.found} of ${scan.faults} found, ${scan.false} false, ${scan.refused} refused`,
    ),
    figure(
      'pose_error_deg',
      quantile([...free.poseErrors, ...guided.poseErrors], 0.5),
      '°',
      '≤ 1',
      `median over ${free.poseErrors.length + guided.poseErrors.length} pairs between the angle verdict and the angle between the true lines of sight; in free pose alone ${round(quantile(free.poseErrors, 0.5))}`,
    ),
    figure(
      'align_render_p95_px',
      quantile(guided.alignErrors, 0.95),
      'px at 2000 px',
      '≤ 1',
      `guided pairs, at test points, key contacts, vias and holes, against the true cameras with their lenses; in free pose ${round(quantile(free.alignErrors, 0.95))}`,
    ),
    figure(
      'render_part_right',
      named.right / Math.max(1, named.asked),
      '',
      '≥ 0.95',
      `${named.asked} parts gone, moved or bridged that were proposed in guided and free pose, named rightly`,
    ),
  ];
}
