import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { Role } from '../../../bench/ports.ts';
import { inviteDevice, revokeDevice, useDevices, type DevicesView, type Invitation } from '../api/devices.ts';
import { sentenceOf } from '../api/problem-error.ts';
import { dayAndTime } from '../format/when.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Answer } from '../ui/answer.tsx';
import { Chips } from '../ui/chips.tsx';
import { Section } from '../ui/section.tsx';

const ROLE_WORDS: Readonly<Record<Role, string>> = { owner: 'Everything', bench: 'All the work', view: 'Only look' };
const CHOICES = (['bench', 'view', 'owner'] as const).map((value) => ({ value, label: ROLE_WORDS[value] }));

/** Which phones and other machines may reach the bench, and the way in for one more. */
export function DevicesSection() {
  const devices = useDevices();
  return (
    <Section id="devices" title="Devices">
      <Answer query={devices}>{(view) => <Devices view={view} />}</Answer>
    </Section>
  );
}

function Devices({ view }: { readonly view: DevicesView }) {
  return (
    <>
      {view.network === null ? (
        <p>
          The bench answers to this machine only. To let a phone in, start it with <code>--lan</code> (such as{' '}
          <code>npm start -- --lan</code>), and come back here.
        </p>
      ) : (
        <Door network={view.network} />
      )}
      {view.devices.length > 0 && <DeviceList devices={view.devices} />}
    </>
  );
}

function Door({ network }: { readonly network: NonNullable<DevicesView['network']> }) {
  const { tell } = useRecorder();
  const [role, setRole] = useState<Role>('bench');
  const [invitation, setInvitation] = useState<Invitation | null>(null);
  const invite = (): void =>
    void inviteDevice(role).then(setInvitation, (error: unknown) => {
      tell(sentenceOf(error), 'bad');
    });
  return (
    <>
      <p>
        Devices of this network reach the bench at <code>{network.urls[0]}</code>. A phone warns at first that it does not know the
        certificate: go on only if its SHA-256 fingerprint is this one.
      </p>
      <p className="small">
        <code className="fingerprint">{network.fingerprint}</code>
      </p>
      <Chips legend="The next device may do" options={CHOICES} value={role} onChange={setRole} />
      <div className="row">
        <button type="button" className="main" onClick={invite}>
          Let a device join
        </button>
      </div>
      {invitation !== null && <ScanMe invitation={invitation} />}
    </>
  );
}

function ScanMe({ invitation: { links, expires_at } }: { readonly invitation: Invitation }) {
  const [first] = links;
  if (first === undefined) return null;
  return (
    <div className="invitation">
      <img
        className="qr"
        src={`data:image/svg+xml,${encodeURIComponent(first.qr_svg)}`}
        width={240}
        height={240}
        alt={`Code to scan with the camera of the device; it leads to ${new URL(first.url).host}`}
      />
      <p>Scan it with the camera of the device. It works once, until {dayAndTime(expires_at)}. Show it to nobody else.</p>
      {links.length > 1 && (
        <p className="small muted">
          If it does not open, this machine may be reached at{' '}
          {links
            .slice(1)
            .map(({ url }) => new URL(url).host)
            .join(' or ')}
          .
        </p>
      )}
    </div>
  );
}

function DeviceList({ devices }: Pick<DevicesView, 'devices'>) {
  const client = useQueryClient();
  const { tell } = useRecorder();
  const revoke = async (name: string): Promise<void> => {
    try {
      await revokeDevice(name);
      tell(`${name} is let in no more`, 'plain');
    } catch (error) {
      tell(sentenceOf(error), 'bad');
    }
    await client.invalidateQueries({ queryKey: ['devices'] });
  };
  return (
    <ul className="plain-list" aria-label="Devices that have joined">
      {devices.map(({ id, name, role, last_seen_at }) => (
        <li key={id} className="row">
          <span>
            <strong>{name}</strong>, {ROLE_WORDS[role].toLowerCase()}
            <span className="muted">{last_seen_at === null ? ', not seen yet' : `, seen ${dayAndTime(last_seen_at)}`}</span>
          </span>
          <button type="button" aria-label={`Let in no more: ${name}`} onClick={() => void revoke(name)}>
            Let in no more
          </button>
        </li>
      ))}
    </ul>
  );
}
