import { afterEach, describe, expect, it } from 'vitest';
import { LinearProgramBuilder, type LinearProgram } from '../../core/planning/index.ts';
import { openLinearSolver, type LinearSolver } from './linear-solver.ts';

let solver: LinearSolver;
afterEach(() => solver.close());

/** max 3x + 5y with x + 2y ≤ 4 and x ≤ 3. */
function small(): LinearProgram {
  const lp = new LinearProgramBuilder();
  const [x, y] = [lp.column(3, 0, 3), lp.column(5, 0, Infinity)];
  lp.row(-Infinity, 4, [
    [x, 1],
    [y, 2],
  ]);
  return lp.build();
}

describe('the solver of linear programs', () => {
  it('gives the optimum, where it is, and what one more of a limit is worth', async () => {
    solver = openLinearSolver();
    const answer = await solver.solve(small());
    expect(answer).toMatchObject({ ok: true, objective: 11.5 });
    expect(answer.ok && [...answer.x, ...answer.prices]).toEqual([3, 0.5, 2.5]);
  });

  it('answers a program without a solution, and one without an end, with what is wrong', async () => {
    solver = openLinearSolver();
    const none = new LinearProgramBuilder();
    none.row(2, Infinity, [[none.column(1, 0, 1), 1]]);
    expect(await solver.solve(none.build())).toMatchObject({ ok: false, code: 'infeasible' });
    const endless = new LinearProgramBuilder();
    endless.row(0, Infinity, [[endless.column(1, 0, Infinity), 1]]);
    const answer = await solver.solve(endless.build());
    expect(answer.ok).toBe(false);
  });

  it('goes on over a change of worker, and answers what was asked before it', async () => {
    solver = openLinearSolver(2);
    const answers = await Promise.all(Array.from({ length: 7 }, () => solver.solve(small())));
    expect(answers.map((answer) => answer.ok && answer.objective)).toEqual(Array.from({ length: 7 }, () => 11.5));
  });

  it('answers a program that makes no sense instead of stopping', async () => {
    solver = openLinearSolver();
    const wrong = { ...small(), starts: Int32Array.from([0, 5]) };
    expect(await solver.solve(wrong)).toMatchObject({ ok: false, code: 'not-solved' });
    expect(await solver.solve(small())).toMatchObject({ ok: true });
  });
});
