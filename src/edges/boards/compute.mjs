import { parentPort, workerData } from 'node:worker_threads';
import { BoardWork, boardTask, slicesOf, stepsOf } from '../../bench/boards/index.js';

/** Computes the rows of one dictionary that are not there yet, from `first` on, and sends them in slices. */
const task = boardTask(workerData.model, workerData.confirmed);
const work = new BoardWork(task);
for (const { from, count } of stepsOf(1 + task.faults.length, workerData.first)) {
  for (const rows of slicesOf(task, work.rows(from, count))) parentPort.postMessage(rows, [rows.readings.buffer, rows.works.buffer]);
}
