import { NettingError } from './netting-error.ts';
import { readNetName } from './net-names.ts';
import type { Nets, PinNamed, PinsJoined } from './nets-of.ts';

/**
 * The law of nets: each pin is of exactly one net, each node of one net, what was last measured as joined is one net, every link of a contradiction was
 * said, and every measurement that the nets go against is told as a contradiction. Throws NettingError where it does not hold.
 */
export function assertNets({ nets, nodeOf, contradictions }: Nets, joins: readonly PinsJoined[], names: readonly PinNamed[] = []): void {
  const pins = nets.flatMap((net) => net.pins);
  check(new Set(pins).size === pins.length, 'a pin is of two nets');
  check(new Set(nets.map(({ node }) => node)).size === nets.length, 'two nets have one node');
  check(
    pins.length === nodeOf.size && nets.every((net) => net.pins.every((pin) => nodeOf.get(pin) === net.node)),
    'a pin has another node',
  );
  const last = new Map<string, { readonly joined: boolean; readonly pair: readonly [string, string] }>();
  for (const {
    pins: [first, ...others],
    joined,
  } of joins)
    for (const other of others)
      if (first !== undefined && first !== other) last.set([first, other].sort().join(' '), { joined, pair: [first, other] });
  const told = new Set(contradictions.flatMap((each) => (each.code === 'measured-apart' ? [[...each.pins].sort().join(' ')] : [])));
  for (const [key, { joined, pair }] of last) {
    const isOne = nodeOf.get(pair[0]) === nodeOf.get(pair[1]);
    check(
      joined ? isOne : !isOne || told.has(key),
      `${key} were measured as ${joined ? 'joined' : 'not joined'}, which is neither held nor told`,
    );
  }
  for (const { pin, name } of names) check(readNetName(name) === null || nodeOf.has(pin), `${pin} was named and is of no net`);
  for (const { through, pins: ends } of contradictions) {
    check(through.length > 0 && ends.every((pin) => nodeOf.has(pin)), 'a contradiction has no chain');
    check(
      through.every((link) => 'name' in link || joins[link.join]?.joined === true),
      'a link of a chain was not measured as joined',
    );
  }
}

function check(holds: boolean, what: string): void {
  if (!holds) throw new NettingError('not-nets', what);
}
