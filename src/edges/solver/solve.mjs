import { parentPort } from 'node:worker_threads';
import loadHighs from 'highs';

const loading = loadHighs();

/** Answers each message { id, program } with { id, answer }; what cannot be solved is an answer, not an exception. */
parentPort.on('message', async ({ id, program }) => {
  let answer;
  try {
    answer = solve(await loading, program);
  } catch (error) {
    answer = { ok: false, code: 'not-solved', detail: String(error?.message ?? error).split('\n')[0] };
  }
  parentPort.postMessage({ id, answer }, []);
});

function solve(highs, program) {
  return highs.withModel(modelOf(highs, program), (model) => {
    model.options.set({ output_flag: false });
    model.run();
    const status = model.getModelStatus();
    const { optimal, infeasible, unbounded, unboundedOrInfeasible } = highs.constants.modelStatus;
    if (status === infeasible || status === unboundedOrInfeasible) return { ok: false, code: 'infeasible', detail: String(status) };
    if (status === unbounded) return { ok: false, code: 'unbounded', detail: String(status) };
    if (status !== optimal) return { ok: false, code: 'not-solved', detail: `status ${status}` };
    const { colValue, rowDual } = model.getSolution();
    const prices = program.whole ? new Float64Array(program.rowLower.length) : Float64Array.from(rowDual);
    return { ok: true, objective: model.getObjectiveValue(), x: Float64Array.from(colValue), prices };
  });
}

const modelOf = (highs, program) => ({
  numCols: program.cost.length,
  numRows: program.rowLower.length,
  sense: highs.constants.objectiveSense.maximize,
  colCost: program.cost,
  colLower: program.lower,
  colUpper: program.upper,
  rowLower: program.rowLower,
  rowUpper: program.rowUpper,
  matrix: {
    format: 'csr',
    numRows: program.rowLower.length,
    numCols: program.cost.length,
    starts: program.starts,
    indices: program.indices,
    values: program.values,
  },
  ...(program.whole
    ? {
        integrality: Array.from(program.whole, (whole) =>
          whole ? highs.constants.variableType.integer : highs.constants.variableType.continuous,
        ),
      }
    : {}),
});
