import { expect, it } from 'vitest';
import { doorWords, networkAt } from './network-door.ts';

it('is reached at the addresses of the machine, and by its names', () => {
  const network = networkAt(4781, { names: ['localhost', 'Desk.local'], addresses: ['192.0.2.7', '2001:db8::7'] }, 'AB:CD');
  expect(network.urls).toEqual(['https://192.0.2.7:4781/', 'https://[2001:db8::7]:4781/']);
  expect([...network.hosts].sort()).toEqual(['192.0.2.7', '[2001:db8::7]', 'desk.local', 'localhost']);
  expect(doorWords(network, true)).toMatch(/192\.0\.2\.7.*\nIts certificate is new: SHA-256 AB:CD$/);
});

it('falls back to names on a machine that is on no network', () => {
  expect(networkAt(1, { names: ['localhost'], addresses: [] }, '').urls).toEqual(['https://localhost:1/']);
});
