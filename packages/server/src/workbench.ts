/** What the routes work with. */
import type { Assessments } from './assessments.ts';
import type { Data } from './data.ts';
import type { EventHub } from './event-hub.ts';

export interface Workbench {
  readonly data: Data;
  readonly assessments: Assessments;
  readonly events: EventHub;
}
