import { lazy, Suspense } from 'react';
import { Route, Router, Switch } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import { Broken } from './screens/broken.tsx';
import { JobList } from './screens/job-list.tsx';
import { JobScreen } from './screens/job-screen.tsx';

const NewJob = lazy(() => import('./edit/new-job.tsx').then(({ NewJob: page }) => ({ default: page })));
const CataloguePage = lazy(() => import('./edit/file-page.tsx').then(({ CataloguePage: page }) => ({ default: page })));
const PricesPage = lazy(() => import('./edit/file-page.tsx').then(({ PricesPage: page }) => ({ default: page })));

/** Addresses stand after the hash, so that any static host serves them without rules of its own. */
export function App() {
  return (
    <Broken>
      <Router hook={useHashLocation}>
        <Suspense fallback={<main className="page" aria-busy="true" />}>
          <Switch>
            <Route path="/new">
              <NewJob />
            </Route>
            <Route path="/catalogue/:id/:part?">
              {({ id, part }) => <CataloguePage key={id} id={id} part={part} />}
            </Route>
            <Route path="/prices/:id/with/:catalogue">
              {({ id, catalogue }) => <PricesPage key={id} id={id} catalogue={catalogue} />}
            </Route>
            <Route path="/prices/:id">{({ id }) => <PricesPage key={id} id={id} />}</Route>
            <Route path="/job/:id/:step/working/:entry">
              {({ id, step, entry }) => <JobScreen id={id} step={step} working={decodeURIComponent(entry)} />}
            </Route>
            <Route path="/job/:id/:step/enter/:part">
              {({ id, step, part }) => <JobScreen id={id} step={step} part={part} />}
            </Route>
            <Route path="/job/:id/:step?">{({ id, step }) => <JobScreen id={id} step={step} />}</Route>
            <Route>
              <JobList />
            </Route>
          </Switch>
        </Suspense>
      </Router>
    </Broken>
  );
}
