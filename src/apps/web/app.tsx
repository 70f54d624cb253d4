import { lazy, Suspense } from 'react';
import { Redirect, Route, Switch } from 'wouter';
import { BenchPage } from './bench/bench-page.tsx';
import { LastBench } from './bench/last-bench.tsx';
import { AddPage } from './first-run/add-page.tsx';
import { Home } from './first-run/home.tsx';
import { PilePage } from './pile/pile-page.tsx';
import { Frame } from './shell/frame.tsx';

const ScoutPage = lazy(() => import('./scout/scout-page.tsx'));
const CalculatorsPage = lazy(() => import('./calculators/calculators-page.tsx'));
const DrawerPage = lazy(() => import('./drawer/drawer-page.tsx'));
const BooksPage = lazy(() => import('./books/books-page.tsx'));
const JudgedPage = lazy(() => import('./judged/judged-page.tsx'));
const ProfitPage = lazy(() => import('./profit/profit-page.tsx'));
const ModelsPage = lazy(() => import('./models/models-page.tsx'));
const ModelPage = lazy(() => import('./models/model-page.tsx'));
const NewModelPage = lazy(() => import('./grow/new-model-page.tsx'));
const BoardEditorPage = lazy(() => import('./grow/board-editor-page.tsx'));
const RecordOpeningPage = lazy(() => import('./grow/record-opening-page.tsx'));
const CheckPage = lazy(() => import('./grow/check-page.tsx'));
const JoinPage = lazy(() => import('./join/join-page.tsx'));
const OpeningPage = lazy(() => import('./opening/opening-page.tsx'));
const ComparePage = lazy(() => import('./eyes/compare-page.tsx'));
const CapturePage = lazy(() => import('./eyes/capture-page.tsx'));
const MeasurePage = lazy(() => import('./photo-scale/measure-page.tsx'));
const TestPicturePage = lazy(() => import('./test-picture/test-picture-page.tsx'));
const SettingsPage = lazy(() => import('./settings/settings-page.tsx'));

/** Everything stands in the frame, but for the page of a device that the bench does not know yet. */
export function App() {
  return (
    <Switch>
      <Route path="/join">
        <Suspense fallback={null}>
          <JoinPage />
        </Suspense>
      </Route>
      <Route component={Places} />
    </Switch>
  );
}

function Places() {
  return (
    <Frame>
      <Switch>
        <Route path="/" component={Home} />
        <Route path="/add" component={AddPage} />
        <Route path="/scout" component={ScoutPage} />
        <Route path="/pile" component={PilePage} />
        <Route path="/bench" component={LastBench} />
        <Route path="/bench/:id">{({ id }) => <BenchPage key={id} id={decodeURIComponent(id)} />}</Route>
        <Route path="/drawer">
          <DrawerPage bag={null} />
        </Route>
        <Route path="/drawer/bag/:id">{({ id }) => <DrawerPage key={id} bag={decodeURIComponent(id)} />}</Route>
        <Route path="/bench/:id/opening">{({ id }) => <OpeningPage key={id} id={decodeURIComponent(id)} />}</Route>
        <Route path="/bench/:id/compare">{({ id }) => <ComparePage key={id} id={decodeURIComponent(id)} />}</Route>
        <Route path="/bench/:id/camera">{({ id }) => <CapturePage key={id} id={decodeURIComponent(id)} />}</Route>
        <Route path="/bench/:id/measure">{({ id }) => <MeasurePage key={id} id={decodeURIComponent(id)} />}</Route>
        <Route path="/books" component={BooksPage} />
        <Route path="/books/judged" component={JudgedPage} />
        <Route path="/books/profit" component={ProfitPage} />
        <Route path="/models" component={ModelsPage} />
        <Route path="/models/new" component={NewModelPage} />
        <Route path="/models/:id">{({ id }) => <ModelPage id={decodeURIComponent(id)} />}</Route>
        <Route path="/models/:id/opening">{({ id }) => <RecordOpeningPage key={id} id={decodeURIComponent(id)} />}</Route>
        <Route path="/models/:id/board">{({ id }) => <BoardEditorPage key={id} id={decodeURIComponent(id)} />}</Route>
        <Route path="/models/:id/check">{({ id }) => <CheckPage key={id} id={decodeURIComponent(id)} />}</Route>
        <Route path="/calculators" component={CalculatorsPage} />
        <Route path="/test-picture" component={TestPicturePage} />
        <Route path="/settings" component={SettingsPage} />
        <Route>
          <Redirect to="/" replace />
        </Route>
      </Switch>
    </Frame>
  );
}
