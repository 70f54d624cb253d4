import { useMe } from '../api/devices.ts';
import { useBench } from '../api/queries.ts';
import { Answer } from '../ui/answer.tsx';
import { useTitle } from '../ui/use-title.ts';
import { AboutSection } from './about-section.tsx';
import { BackupSection } from './backup-section.tsx';
import { BenchForm } from './bench-form.tsx';
import { BundleSection } from './bundle-section.tsx';
import { DemoSection } from './demo-section.tsx';
import { DevicesSection } from './devices-section.tsx';
import { DeviceSection } from './device-section.tsx';
import { FeesSection } from './fees-section.tsx';
import { PostageSection } from './postage-section.tsx';

/** What holds for the whole bench, and for this device. */
export default function SettingsPage() {
  const bench = useBench();
  const me = useMe();
  const isOwner = me.data?.role === 'owner';
  useTitle('Settings');
  return (
    <>
      <h1>Settings</h1>
      <Answer query={bench}>
        {(view) => (
          <>
            <BenchForm bench={view} />
            <FeesSection currency={view.currency} fees={view.fees} />
            <PostageSection currency={view.currency} postage={view.postage} />
            <DeviceSection joinedAs={me.data?.name ?? null} />
            {isOwner && <DevicesSection />}
            <DemoSection bench={view} />
            {isOwner && <BackupSection />}
            {isOwner && <BundleSection bench={view} />}
            <AboutSection bench={view} />
          </>
        )}
      </Answer>
    </>
  );
}
