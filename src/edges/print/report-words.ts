import type { ReportView } from '../../bench/ports.ts';

export const OUTCOMES: Readonly<Record<ReportView['tests'][number]['outcome'], string>> = {
  open: 'not done',
  pass: 'passed',
  fail: 'failed',
  'signed-off': 'not passed, signed off',
};

export const NOTHING_SAID = 'Nothing on file.';

/** What was measured and does not stand beside a test already. */
export const beyondTests = ({ measured, tests }: ReportView): ReportView['measured'] => {
  const shown = new Set(tests.flatMap((test) => test.measured));
  return measured.filter(({ text, values }) => ![text, ...values].some((line) => shown.has(line)));
};
