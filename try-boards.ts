import { join } from 'node:path';
import { loadModels } from './src/edges/models/load-models.ts';
import { BoardWork, boardTask, stepsOf, GrownKnowledge, simulatedPairs } from './src/bench/boards/index.ts';
const { models } = await loadModels(join(import.meta.dirname, 'models'));
for (const id of ['corrie-cp4', 'tern-tn20']) {
  const t0 = process.cpuUsage();
  const task = boardTask(models.get(id)!, []);
  console.log(id, 'faults', task.faults.length, 'points', task.points.length, 'named', task.points.filter(p=>p.named).length, task.points.slice(-4).map(p=>p.id));
  const work = new BoardWork(task);
  const g = new GrownKnowledge(task, 'h', simulatedPairs(task));
  for (const s of stepsOf(g.rows)) { const t = process.cpuUsage(); const rows = work.rows(s.from, s.count); const m = performance.now(); g.take(rows); const d = process.cpuUsage(t); 
    let nan = 0; for (const v of rows.readings) if (Number.isNaN(v)) nan++; let wn = 0; for (const v of rows.works) if (Number.isNaN(v)) wn++;
    console.log(s.from, s.count, 'cpu s', ((d.user + d.system) / 1e6).toFixed(2), 'take ms', Math.round(performance.now() - m), 'nan', nan, wn); }
  const d = process.cpuUsage(t0); console.log('total', ((d.user + d.system) / 1e6).toFixed(1), 'rss MB', Math.round(process.memoryUsage().rss / 1e6));
  const k = g.knowledge()!;
  for (const [name, w] of k.baseline.functions) console.log(name, 'healthy works', [...w.subarray(0, 16)].join(''), 'mean over faults', ([...w].reduce((a,b)=>a+(b||0),0)/w.length).toFixed(3));
}
