import { CAUTION_WORDS } from '../../../bench/caution-words.ts';
import type { Caution } from '../../../bench/models/index.ts';
import type { AdviceView, CheckView, RemedyView } from '../../../bench/views/index.ts';
import { moneyText } from '../money.ts';
import { percent } from './table.ts';

/** What next, why, and how, as a person at the bench reads it. */
export function adviceLines(advice: AdviceView, currency: string): string[] {
  return [
    `Next: ${advice.headline}`,
    ...advice.why.map((why) => `  ${why}`),
    ...(advice.check ? checkLines(advice.check, currency) : []),
    ...(advice.remedy ? remedyLines(advice.remedy, currency) : []),
    ...others(advice, currency),
  ];
}

function checkLines(check: CheckView, currency: string): string[] {
  const accessories = check.with.length > 0 ? `, with ${check.with.join(' and ')}` : '';
  return [
    `  ${check.minutes} min, ${check.stage}${accessories}; saves ${moneyText(check.saving_minor, currency)} on average (${check.bits.toFixed(2)} bit)`,
    ...cautionLines(check.cautions),
    ...(check.how ? [`  How: ${check.how}`] : []),
    ...(check.reference ? [`  A good one shows ${check.reference}`] : []),
  ];
}

function remedyLines(remedy: RemedyView, currency: string): string[] {
  const parts = remedy.parts.map((part) => `${part.count} × ${part.name} (${part.in_drawer} in the drawer)`);
  return [
    `  ${percent(remedy.chance)} that it works then; ${remedy.minutes} min, ${moneyText(remedy.cost_minor, currency)}, ${percent(remedy.risk)} risk`,
    ...cautionLines(remedy.cautions),
    ...(remedy.how ? [`  How: ${remedy.how}`] : []),
    ...(parts.length > 0 ? [`  Parts: ${parts.join(', ')}`] : []),
    ...remedy.donors.map((donor) => `  From: ${donor.name} (${donor.item_id}), good with ${percent(donor.chance)}`),
  ];
}

/** The dangers of a step, one a line. */
export const cautionLines = (cautions: readonly Caution[]): string[] => cautions.map((caution) => `  ! ${CAUTION_WORDS[caution]}`);

function others(advice: AdviceView, currency: string): string[] {
  const checks = advice.other_checks
    .slice(0, 3)
    .map((check) => `  ${check.name} (${check.minutes} min, saves ${moneyText(check.saving_minor, currency)})`);
  const remedies = advice.other_remedies
    .slice(0, 3)
    .map((remedy) => `  ${remedy.name} (${percent(remedy.chance)}, ${moneyText(remedy.cost_minor, currency)})`);
  return checks.length + remedies.length > 0 ? ['Or:', ...checks, ...remedies] : [];
}
