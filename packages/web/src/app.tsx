import { Route, Router, Switch } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import { Broken } from './screens/broken.tsx';
import { JobList } from './screens/job-list.tsx';
import { JobScreen } from './screens/job-screen.tsx';

/** Addresses stand after the hash, so that any static host serves them without rules of its own. */
export function App() {
  return (
    <Broken>
      <Router hook={useHashLocation}>
        <Switch>
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
      </Router>
    </Broken>
  );
}
