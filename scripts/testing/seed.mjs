/**
 * Property tests draw anew at every run, so that over time they see ever more. In CI they draw from one seed, so that a change is
 * judged by what it changes; SPAREWRIGHT_SEED sets another, or repeats a run that failed.
 */
import fc from 'fast-check';

const asked = process.env.SPAREWRIGHT_SEED ?? (process.env.CI ? '20261125' : undefined);
if (asked !== undefined) fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(asked) });
