import { deviceLoad } from '../crash/device-load.ts';
import { manyServers } from '../crash/many-servers.ts';
import { startPostgres } from '../store/postgres-server.ts';
import { quantile, round, type Figure, type Progress } from './figure.ts';

const [SERVERS, DEVICES, SECONDS, PAUSE_MS] = [4, 50, 60, 5000];
const [KILLS, CRASHES, EVENTS] = [40, 4, 6000];

/** How a workshop of several servers on one database does: under load, and when servers and database are killed. */
export async function loadFigures(progress: Progress): Promise<Figure[]> {
  const postgres = await startPostgres();
  try {
    progress(`${DEVICES} devices at work on ${SERVERS} servers for ${SECONDS} s …`);
    const load = await deviceLoad(postgres, {
      servers: SERVERS,
      devices: DEVICES,
      seconds: SECONDS,
      pauseMs: PAUSE_MS,
      seed: 'figures of trust',
    });
    progress(`Killing ${KILLS} of ${SERVERS} servers and the database ${CRASHES} times …`);
    const killed = await manyServers(postgres, {
      servers: SERVERS,
      kills: KILLS,
      databaseCrashes: CRASHES,
      total: EVENTS,
      seed: 'figures of trust',
    });
    const times = Object.values(load.times).flat();
    const each = Object.entries(load.times).map(([action, sample]) => `${action} ${round(quantile(sample, 0.95))}`);
    const setting = `${times.length} requests of ${DEVICES} devices in ${SECONDS} s, a pause of ${PAUSE_MS / 1000} s on average, on ${SERVERS} servers on one PostgreSQL with its disk made safe, all on this machine over HTTP`;
    return [
      {
        figure: 'trust.load_p95_ms',
        value: round(quantile(times, 0.95)),
        unit: 'ms',
        target: '≤ 250',
        reference: `${setting}; p95 by kind in ms: ${each.join(', ')}; median ${round(quantile(times, 0.5))} ms`,
      },
      {
        figure: 'trust.load_errors',
        value: load.errors.length + load.lost,
        unit: '',
        target: '= 0',
        reference: `answers other than 200 and events that not every server has at the end, in the same${load.errors.length > 0 ? `: ${load.errors.slice(0, 3).join('; ')}` : ''}`,
      },
      {
        figure: 'trust.many_lost_events',
        value: killed.lost + killed.doubled + killed.apart,
        unit: '',
        target: '= 0',
        reference: `lost, doubled, or servers whose state differs at the end: ${killed.acknowledged} acknowledged events, ${KILLS} of ${SERVERS} servers killed with -9 and the database ${CRASHES} times, one after the other`,
      },
    ];
  } finally {
    await postgres.stop();
  }
}
