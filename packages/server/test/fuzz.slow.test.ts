/** Whatever is sent, the answer is an answer or a refusal in words, never a fault of the program. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { get, ownFaults, post } from './ask-app.ts';
import { placesIn, replaced, valueAt } from './document-places.ts';
import { places } from './places.ts';

const job: unknown = JSON.parse(readFileSync(join(places.examples, 'plunger.job.json'), 'utf8'));

async function expectRefusal(response: Response): Promise<void> {
  const body: unknown = await response.json();
  expect(ownFaults()).toEqual([]);
  expect(response.status).toBeGreaterThanOrEqual(400);
  expect(response.status).toBeLessThan(500);
  expect(body).toEqual({ message: expect.stringMatching(/\S/), issues: expect.any(Array) });
}

describe('fuzzed requests', () => {
  it('bodies of any text are refused in words', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'binary', maxLength: 300 }), async (body) => {
        await expectRefusal(await post('/api/assess', body));
      }),
      { numRuns: 300 },
    );
  });

  it('bodies of any JSON are refused in words', async () => {
    await fc.assert(
      fc.asyncProperty(fc.json({ maxDepth: 6 }), async (body) => {
        await expectRefusal(await post('/api/assess', body));
      }),
      { numRuns: 300 },
    );
  });

  it('a job with any one place changed is answered or refused in words', async () => {
    const place = fc.constantFrom(...placesIn(job));
    const value = fc.oneof(
      fc.jsonValue({ maxDepth: 2 }),
      fc.string({ unit: 'binary' }),
      fc.double({ min: 0, max: 400, noNaN: true }),
      fc.constantFrom('0', '1e9', '-5', '12 ±13', '40 zz99', '1/0', '0.0001', '3000', '<svg onload=x>'),
    );
    await fc.assert(
      fc.asyncProperty(place, value, async (path, by) => {
        const response = await post('/api/assess', JSON.stringify(replaced(job, path, by)));
        if (response.status !== 200) return expectRefusal(response);
        expect(ownFaults()).toEqual([]);
        expect(await response.text()).not.toMatch(/:(?:NaN|-?Infinity)|"[^"]*\bNaN\b/);
      }),
      { numRuns: 200 },
    );
  }, 120_000);

  it('words that every object of the language knows are words like any other, wherever text stands', async () => {
    for (const path of placesIn(job)) {
      if (typeof valueAt(job, path) !== 'string') continue;
      for (const word of ['__proto__', 'constructor', 'toString']) {
        const response = await post('/api/assess', JSON.stringify(replaced(job, path, word)));
        expect(ownFaults(), `${path.join('.')} = ${word}`).toEqual([]);
        if (response.status !== 200) await expectRefusal(response);
      }
    }
  }, 120_000);

  it('paths of any text lead nowhere, or to a page', async () => {
    await fc.assert(
      fc.asyncProperty(fc.webPath(), fc.webQueryParameters(), async (path, query) => {
        const response = await get(`/api/jobs/${path}?${query}`);
        if (response.status !== 200) await expectRefusal(response);
        expect(ownFaults()).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  it('hosts and origins of any text are refused', async () => {
    const word = fc.string({ unit: 'grapheme-ascii', maxLength: 60 }).map((s) => `x${s.trim()}`);
    await fc.assert(
      fc.asyncProperty(word, async (text) => {
        await expectRefusal(await get('/api/jobs', { host: text }));
        await expectRefusal(await get('/api/jobs', { origin: text }));
      }),
      { numRuns: 300 },
    );
  });

  it('questions of any name and input are refused in words', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ maxLength: 30 }), fc.json(), async (name, body) => {
        await expectRefusal(await post(`/api/ask/x${encodeURIComponent(name)}`, body));
      }),
      { numRuns: 200 },
    );
  });
});
