import { Worker } from 'node:worker_threads';
import type { LinearAnswer, LinearProgram, SolveLinearProgram } from '../../core/planning/index.ts';

/** A worker is replaced after so many programs: the solver keeps memory of those that it has solved. */
const PROGRAMS_A_WORKER = 200;

export interface LinearSolver {
  readonly solve: SolveLinearProgram;
  close(): Promise<void>;
}

interface Waiting {
  readonly resolve: (answer: LinearAnswer) => void;
}

/** Solves linear and whole programs with HiGHS in one worker, which stays warm between programs and is started at once. */
export function openLinearSolver(programsAWorker = PROGRAMS_A_WORKER): LinearSolver {
  let worker = startWorker();
  return {
    solve: (program) => {
      if (worker.taken >= programsAWorker || worker.dead) {
        worker.retire();
        worker = startWorker();
      }
      return worker.solve(program);
    },
    close: () => worker.stop(),
  };
}

interface WarmWorker {
  readonly taken: number;
  readonly dead: boolean;
  solve(program: LinearProgram): Promise<LinearAnswer>;
  /** Stops once what it has taken is answered. */
  retire(): void;
  stop(): Promise<void>;
}

function startWorker(): WarmWorker {
  const thread = new Worker(new URL('./solve.mjs', import.meta.url));
  thread.unref();
  const waiting = new Map<number, Waiting>();
  let [taken, retired, dead] = [0, false, false];
  const settle = (id: number, answer: LinearAnswer): void => {
    waiting.get(id)?.resolve(answer);
    waiting.delete(id);
    if (waiting.size > 0) return;
    thread.unref();
    if (retired) void thread.terminate();
  };
  thread.on('message', ({ id, answer }: { id: number; answer: LinearAnswer }) => settle(id, answer));
  const fail = (detail: string): void => {
    dead = true;
    for (const id of Array.from(waiting.keys())) settle(id, { ok: false, code: 'not-solved', detail });
  };
  thread.on('error', (error: Error) => fail(error.message));
  thread.on('exit', (code) => fail(`the solver stopped with code ${code}`));
  return {
    get taken() {
      return taken;
    },
    get dead() {
      return dead;
    },
    solve: (program) =>
      new Promise((resolve) => {
        const id = taken++;
        waiting.set(id, { resolve });
        thread.ref();
        thread.postMessage({ id, program }, []);
      }),
    retire: () => {
      retired = true;
      if (waiting.size === 0) void thread.terminate();
    },
    stop: async () => {
      await thread.terminate();
    },
  };
}
