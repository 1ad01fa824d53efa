import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { jobDocument, temporaryFolder } from '../test/temporary.ts';
import { openStore } from './open-store.ts';

describe('undoing', () => {
  const titles = (text: string) => jobDocument({ title: text });

  test('and redoing in any order moves over the changes as an editor does', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom('change', 'undo', 'redo'), { maxLength: 25 }), (gestures) => {
        const { jobs, close } = openStore({ folder: temporaryFolder() });
        const { id } = jobs.create(titles('0'), {});
        // The model: what an editor with two stacks would show.
        const past: string[] = [];
        const future: string[] = [];
        let shown = '0';
        for (const [i, gesture] of gestures.entries()) {
          const { undo, redo } = jobs.steps(id);
          if (gesture === 'change') {
            past.push(shown);
            future.length = 0;
            shown = String(i + 1);
            jobs.save(id, jobs.get(id).number, titles(shown), {});
          } else {
            const [from, to] = gesture === 'undo' ? [past, future] : [future, past];
            const number = gesture === 'undo' ? undo : redo;
            expect(number === undefined).toBe(from.length === 0);
            if (number === undefined) continue;
            to.push(shown);
            shown = from.pop() ?? '';
            jobs.takeBack(id, number);
          }
          expect(jobs.get(id).document).toEqual(titles(shown));
        }
        close();
      }),
      { numRuns: 25 },
    );
  });
});
