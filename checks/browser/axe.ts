import { createRequire } from 'node:module';
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';

const SOURCE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

interface AxeResult {
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly target: unknown[]; readonly failureSummary?: string }[];
  }[];
}

/** Runs axe-core (the published rules of WCAG) in a page. */
export class AxeBuilder {
  constructor(private readonly page: Page) {}

  /** One line a violation: the rule, where, and what is wrong. */
  async violations(): Promise<string[]> {
    await this.page.evaluate(SOURCE);
    const result = (await this.page.evaluate(
      (values) =>
        (window as unknown as { axe: { run: (root: Document, options: object) => Promise<unknown> } }).axe.run(document, {
          runOnly: { type: 'tag', values },
        }),
      RULES,
    )) as AxeResult;
    return result.violations.flatMap(({ id, nodes }) =>
      nodes.map((node) => `${id} at ${String(node.target)}: ${node.failureSummary ?? ''}`),
    );
  }
}
