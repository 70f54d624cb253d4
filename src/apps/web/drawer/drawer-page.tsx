import { useDrawer, useModels } from '../api/queries.ts';
import { Answer } from '../ui/answer.tsx';
import { useTitle } from '../ui/use-title.ts';
import { AssembliesSection } from './assemblies-section.tsx';
import { BagsSection } from './bags-section.tsx';
import { FitSection } from './fit-section.tsx';
import { OrdersSection } from './orders-section.tsx';

/** Donors and parts: what can go into the next unit. */
export default function DrawerPage() {
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
            <BagsSection drawer={view} models={models.data ?? []} />
            <OrdersSection drawer={view} />
            <FitSection />
          </>
        )}
      </Answer>
    </>
  );
}
