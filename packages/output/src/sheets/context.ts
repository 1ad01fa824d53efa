/** What every sheet is written from. */
import type { Assessment } from '@sparewright/core/job/assessment';
import type { Job } from '@sparewright/core/job/schema';
import type { Workshop } from '@sparewright/core/lathe/schema';
import type { RecoverResult } from '@sparewright/core/recover/recover-result';
import type { PresentSettings } from '../present/settings.ts';

export interface PacketInput {
  readonly job: Job;
  readonly workshop: Workshop | undefined;
  readonly assessment: Assessment;
  /** What the readings say the part was meant to be; undefined while there are none, or while that is not worked out yet. */
  readonly recovered: RecoverResult | undefined;
  /** The photographs by the hash of their content, undefined for one that is not there; left out where none can be had. */
  readonly picture?: ((hash: string) => Uint8Array | undefined) | undefined;
}

export interface PacketContext extends PacketInput {
  readonly settings: PresentSettings;
}
