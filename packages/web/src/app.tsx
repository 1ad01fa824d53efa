/** The page: a choice of jobs, and the one that is open. */
import { useEffect, useState } from 'react';
import type { JobEntry } from './answer.ts';
import { listJobs } from './ask-server.ts';
import { JobScreen } from './parts/job-screen.tsx';
import { usePlace } from './use-place.ts';

export function App() {
  const [place, go] = usePlace();
  const [jobs, setJobs] = useState<readonly JobEntry[]>();
  const [trouble, setTrouble] = useState('');

  useEffect(() => {
    const stop = new AbortController();
    listJobs(stop.signal).then(setJobs, (error: unknown) => {
      if (!stop.signal.aborted) setTrouble(error instanceof Error ? error.message : 'The list of jobs did not come.');
    });
    return () => stop.abort();
  }, []);

  if (trouble !== '') return <Only words={trouble} />;
  if (!jobs) return <Only words="Opening the jobs …" />;
  const job = jobs.find((j) => j.id === place.job) ?? jobs[0];
  if (!job) return <Only words="There are no jobs in the folder that was given." />;
  return <JobScreen key={job.id} id={job.id} jobs={jobs} stage={place.stage} go={go} />;
}

function Only({ words }: { readonly words: string }) {
  return (
    <main className="only">
      <h1>Sparewright</h1>
      <p role="status">{words}</p>
    </main>
  );
}
