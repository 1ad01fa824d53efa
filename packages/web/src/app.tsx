/** The page: what the address names. */
import { Suspense } from 'react';
import { later } from './later.tsx';
import { JobScreen } from './parts/job-screen.tsx';
import { usePlace } from './place.ts';
import { NewJob } from './shelf/new-job.tsx';
import { Shelf } from './shelf/shelf.tsx';
import { WorkshopScreen } from './workshop/workshop-screen.tsx';

/** Read only when it is wanted. */
const PairingScreen = later(() => import('./pairing/pairing-screen.tsx'));
const HelpScreen = later(() => import('./help/help-screen.tsx'));

export function App() {
  const place = usePlace();
  switch (place.screen) {
    case 'shelf':
      return <Shelf />;
    case 'new':
      return <NewJob />;
    case 'workshop':
      return <WorkshopScreen part={place.part} />;
    case 'pairing':
      return (
        <Suspense fallback={<p role="status">Opening …</p>}>
          <PairingScreen />
        </Suspense>
      );
    case 'help':
      return (
        <Suspense fallback={<p role="status">Opening the help …</p>}>
          <HelpScreen {...place} />
        </Suspense>
      );
    case 'job':
      return <JobScreen key={place.job} id={place.job} stage={place.stage} />;
  }
}
