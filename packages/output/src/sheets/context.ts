/** What every sheet is written from. */
import type { Assessment } from '@sparewright/core/job/assessment';
import type { Job } from '@sparewright/core/job/schema';
import type { Workshop } from '@sparewright/core/lathe/schema';
import type { PresentSettings } from '../present/settings.ts';

export interface PacketInput {
  readonly job: Job;
  readonly workshop: Workshop | undefined;
  readonly assessment: Assessment;
}

export interface PacketContext extends PacketInput {
  readonly settings: PresentSettings;
}
