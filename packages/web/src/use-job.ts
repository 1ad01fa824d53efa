/** One job, or the workshop, on the page: opened, kept, and shown anew with every change. */

import type { Json } from '@sparewright/core/job/merge';
import type { JobPage } from '@sparewright/output/present/job-view';
import { useEffect, useMemo, useState } from 'react';
import { jobAddress, workshopAddress } from './ask-server.ts';
import { type Path, withValue } from './document.ts';
import { openDesk } from './save/desk.ts';
import { type Desk, type DeskOptions, type DeskState, unopened } from './save/desk-state.ts';
import type { News } from './save/events.ts';
import type { Side } from './save/join.ts';
import { client } from './save/outbox.ts';
import { openAssessor } from './worker/client.ts';
import { whenWorkshopChanges } from './worker/known-workshop.ts';

/** A document that fields write into. */
export interface Form {
  readonly document: Json | undefined;
  readonly refusals: Readonly<Record<string, string>>;
  /** Undefined takes the value out. */
  put(path: Path, value: Json | undefined): void;
  edit(change: (document: Json) => Json): void;
}

export interface Open<View> extends Form, DeskState<View> {
  readonly address: string;
  undo(): void;
  redo(): void;
  settle(choice: (path: string) => Side): void;
  refresh(): void;
}

export type OpenJob = Open<JobPage>;

/** Begins anew only with a new component: give it the job's id as key. */
export function useJob(id: string): OpenJob {
  const options = useMemo(() => {
    const assessor = openAssessor();
    return {
      key: `job.${id}`,
      address: jobAddress(id),
      check: assessor.page,
      concerns: (news: News) =>
        news.kind === 'back' || (news.kind === 'saved' && news.id === id && isForeign(news)) ? 'saved' : undefined,
      whenStale: whenWorkshopChanges,
    } satisfies Omit<DeskOptions<JobPage>, 'tell'>;
  }, [id]);
  return useDesk<JobPage>(options);
}

/** Nothing has to be made of a workshop to show it; the server looks at it when it is saved. */
export function useWorkshop(): Open<undefined> {
  return useDesk<undefined>(workshopDesk);
}

const workshopDesk: Omit<DeskOptions<undefined>, 'tell'> = {
  key: 'workshop',
  address: workshopAddress,
  check: () => Promise.resolve(undefined),
  concerns: (news) => ((news.kind === 'workshop' && isForeign(news)) || news.kind === 'back' ? 'saved' : undefined),
};

function isForeign(news: News): boolean {
  return !('client' in news) || news.client !== client;
}

function useDesk<View>(options: Omit<DeskOptions<View>, 'tell'>): Open<View> {
  const [state, setState] = useState<DeskState<View>>(unopened);
  const [desk, setDesk] = useState<Desk>();
  useEffect(() => {
    const opened = openDesk<View>({ ...options, tell: setState });
    setDesk(opened);
    return () => opened.close();
  }, [options]);
  const acts = useMemo(
    () => ({
      address: options.address,
      put: (path: Path, value: Json | undefined) => desk?.edit((document) => withValue(document, path, value)),
      edit: (change: (document: Json) => Json) => desk?.edit(change),
      undo: () => desk?.undo(),
      redo: () => desk?.redo(),
      settle: (choice: (path: string) => Side) => desk?.settle(choice),
      refresh: () => desk?.refresh(),
    }),
    [desk, options],
  );
  return useMemo(() => ({ ...state, ...acts }), [state, acts]);
}
