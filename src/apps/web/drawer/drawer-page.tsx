import { useDrawer, useModels } from '../api/queries.ts';
import { FitSection } from '../fit/fit-section.tsx';
import { Answer } from '../ui/answer.tsx';
import { useTitle } from '../ui/use-title.ts';
import { AssembliesSection } from './assemblies-section.tsx';
import { BagsSection } from './bags-section.tsx';
import { LabelsSection } from './labels-section.tsx';
import { OrdersSection } from './orders-section.tsx';
import { ShortSection } from './short-section.tsx';

/** Donors and parts: what can go into the next unit. With the bag that is opened, as its label asks. */
export default function DrawerPage({ bag }: { readonly bag: string | null }) {
  const drawer = useDrawer();
  const models = useModels();
  useTitle('Drawer');
  return (
    <>
      <h1>Drawer</h1>
      <Answer query={drawer}>
        {(view) => (
          <>
            <AssembliesSection drawer={view} />
            <BagsSection drawer={view} models={models.data ?? []} opened={bag} />
            <ShortSection drawer={view} />
            <OrdersSection drawer={view} />
            <FitSection bags={view.bags} />
            <LabelsSection bags={view.bags} />
          </>
        )}
      </Answer>
    </>
  );
}
