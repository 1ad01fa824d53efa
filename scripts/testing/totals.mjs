/**
 * A vitest reporter that leaves the totals of a run in a file, for `npm test` to add up:
 * tests passed, failed and skipped, files run, and values compared with the outside.
 */
import { writeFileSync } from 'node:fs';

export default class Totals {
  onTestRunEnd(modules, unhandled) {
    const file = process.env.SPAREWRIGHT_TOTALS;
    if (!file) return;
    const totals = { passed: 0, failed: unhandled.length, skipped: 0, files: modules.length, outside: 0 };
    for (const module of modules) {
      // A file that cannot be loaded, or a hook that throws, has no failing test of its own but is a failure.
      totals.failed += module.errors().length;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === 'passed') totals.passed++;
        else if (state === 'failed') totals.failed++;
        else totals.skipped++;
        if (state === 'passed') totals.outside += test.meta().outsideValues ?? 0;
      }
      for (const suite of module.children.allSuites()) totals.failed += suite.errors().length;
    }
    writeFileSync(file, JSON.stringify(totals));
  }
}
