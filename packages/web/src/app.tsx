/** The page: what the address names. */
import { JobScreen } from './parts/job-screen.tsx';
import { usePlace } from './place.ts';
import { NewJob } from './shelf/new-job.tsx';
import { Shelf } from './shelf/shelf.tsx';
import { WorkshopScreen } from './workshop/workshop-screen.tsx';

export function App() {
  const place = usePlace();
  switch (place.screen) {
    case 'shelf':
      return <Shelf />;
    case 'new':
      return <NewJob />;
    case 'workshop':
      return <WorkshopScreen part={place.part} />;
    case 'job':
      return <JobScreen key={place.job} id={place.job} stage={place.stage} />;
  }
}
