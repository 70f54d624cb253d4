/**
 * Lets the pages be opened while the bench is away. Only over HTTPS, as on a phone: on the machine of the bench itself there is nothing to bridge. A
 * browser that does not trust the certificate allows no worker, and then the pages need the bench, as before.
 */
export function keepPages(): void {
  if (location.protocol !== 'https:' || !('serviceWorker' in navigator)) return;
  navigator.serviceWorker.register('/sw.js').catch(() => undefined);
}
