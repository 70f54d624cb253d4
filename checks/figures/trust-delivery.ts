import { offlinePhone } from '../offline/offline-phone.ts';
import type { Figure, Progress } from './figure.ts';

const [EVENTS, PHOTOS] = [200, 40];

/** Deliveries of a phone that worked offline which differ from exactly once and in order. */
export async function deliveryFigures(progress: Progress): Promise<Figure[]> {
  progress('Delivering what a phone noted offline …');
  const { events, photos, lostRequests, lostAnswers, errors } = await offlinePhone('figures of trust', EVENTS, PHOTOS);
  const reference = `${events} events, ${photos} of them with a photo, noted with the network gone and delivered over one that lost ${lostRequests} requests and ${lostAnswers} answers, the page reloaded in between; events not in their place in the log exactly once, and photos not kept`;
  return [{ figure: 'trust.delivery_errors', value: errors, unit: '', target: '= 0', reference }];
}
