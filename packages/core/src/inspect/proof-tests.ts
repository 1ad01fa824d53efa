/**
 * Tests of the finished part beyond its sizes: what to try, how, and what counts as passed.
 */
import type { Duty } from '../duty/schema.ts';
import type { PartResult } from '../part/part-result.ts';
import type { ProofTest } from './inspect-result.ts';

/** Share above the working load at which joints and pressure parts are usually tried; `common practice`, see `proof-practice`. */
export const proofFactor = 1.5;

export function proofTests(part: PartResult, duty: Duty | undefined): ProofTest[] {
  const tests: ProofTest[] = [
    {
      id: 'look-and-feel',
      title: 'Look and fit by hand',
      how: 'Clean and oil it. Look at every edge and sealing surface under a lens. Fit it by hand through its whole travel, without seals first.',
      acceptance: 'No burr, no tool mark across a sealing surface, no tight spot over the whole travel.',
      why: 'A burr or tight spot found now costs a minute.',
    },
  ];
  for (const bond of duty?.bonds ?? []) {
    if (bond.torque === undefined) continue;
    tests.push({
      id: `torque-${bond.id}`,
      title: `Torque test of ${bond.feature}`,
      how: `After full cure scribe a line across the joint. Apply ${(proofFactor * bond.torque).toFixed(1)} N·m slowly, three times, with the part held in soft jaws.`,
      acceptance: 'The line has not moved.',
      why: `Working torque ${bond.torque} N·m times ${proofFactor}; published strengths of bonded joints vary widely, only a test tells.`,
    });
  }
  if (duty?.pressure !== undefined && duty.pressure > 0)
    tests.push({
      id: 'pressure',
      title: 'Pressure test with liquid',
      how: `Fill with liquid, all air out, stand clear or behind a screen. Raise in steps to ${(proofFactor * duty.pressure).toFixed(2)} MPa and hold 10 minutes. Never test with compressed air.`,
      acceptance: 'No drop of pressure, no weeping; measured after release, no size has changed.',
      why: `Highest working pressure ${duty.pressure} MPa times ${proofFactor}. Where a pressure code applies, its figure and its inspector decide.`,
    });
  for (const thread of part.threads)
    tests.push({
      id: `thread-${thread.id}`,
      title: `Try the thread ${thread.thread.designation}`,
      how: 'Screw it into its mate, or a known nut or plug, by hand over the whole engagement.',
      acceptance: 'Runs by hand to the end, no shake that the original did not have.',
      why: 'A thread is the sum of five sizes; the mate checks them together.',
    });
  return tests;
}
