import { openApp } from '../interface/open-app.ts';
import { hurriedClock, openRoutes, servedRoutes } from '../network/open-routes.ts';
import type { Figure, Progress } from './figure.ts';

/** Routes that answer with data over the network without the key of a device. */
export async function routeFigures(progress: Progress): Promise<Figure[]> {
  progress('Asking every route without a key …');
  const opened = await openApp({ clock: hurriedClock() });
  const open = await openRoutes(opened);
  const reference = `of ${servedRoutes(opened).length} routes that are served, each asked over the network without a key, with a wrong one and with an empty one${open.length > 0 ? `: ${open.join(', ')}` : ''}`;
  await opened.close();
  return [{ figure: 'trust.open_routes', value: open.length, unit: '', target: '= 0', reference }];
}
