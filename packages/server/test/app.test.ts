import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readJob } from '@sparewright/core/job/read-document';
import type { JobEntry, JobPage, Refusal } from '@sparewright/output/present/job-view';
import { describe, expect, it } from 'vitest';
import { get, ownFaults, post, send } from './ask-app.ts';
import { places } from './places.ts';

const text = (name: string): string => readFileSync(join(places.examples, `${name}.job.json`), 'utf8');
const pageOf = async (response: Response): Promise<JobPage> => {
  expect(response.status).toBe(200);
  return response.json();
};
const refusalOf = async (response: Response, status: number): Promise<Refusal> => {
  expect(response.status).toBe(status);
  return response.json();
};

const listOf = async (response: Response): Promise<readonly JobEntry[]> => {
  const list: { total: number; jobs: JobEntry[] } = await response.json();
  expect(list.total).toBe(list.jobs.length);
  return list.jobs;
};

describe('jobs', () => {
  it('lists every example with the worst that was found', async () => {
    const list = await listOf(await get('/api/jobs'));
    expect(list.map((j) => j.id)).toEqual(['valve-guide-pin', 'plunger', 'gland-spindle']);
    for (const job of list) expect(job.title).toBe(readJob(JSON.parse(text(job.id))).title);
  });

  it('gives a job with drawing, sizes, stages and sheets', async () => {
    const page = await pageOf(await get('/api/jobs/valve-guide-pin'));
    expect(page.document).toEqual(JSON.parse(text('valve-guide-pin')));
    expect(page.drawing).toMatch(/^<svg /);
    expect(page.stages.map((s) => s.name).join(' ')).toBe('Evidence Part Duty Route Bench Inspection Record');
    expect(Object.values(page.sheets).every(Array.isArray)).toBe(true);
  });

  it('states findings worst first, as the list of jobs does', async () => {
    const list = await listOf(await get('/api/jobs'));
    for (const { id, worst } of list) {
      const { findings } = await pageOf(await get(`/api/jobs/${id}`));
      const weights = findings.map((f) => ['stop', 'caution', 'note'].indexOf(f.level));
      expect(weights).toEqual(weights.toSorted((a, b) => a - b));
      expect(findings[0]?.level).toBe(worst?.level);
    }
  });

  it('tells where in the document each size was typed', async () => {
    const { sizes } = await pageOf(await get('/api/jobs/valve-guide-pin'));
    const guide = sizes.find((s) => s.id === 'guide.diameter');
    expect(guide).toMatchObject({ entered: '6 f7', path: ['part', 'outside', 4, 'diameter'] });
    // ISO 286-2: f7 at 6 mm is −10/−22 µm.
    expect(guide).toMatchObject({ most: '5.990', least: '5.978', basis: 'f7' });
  });

  it.each([
    'nothing',
    '..%2f..%2fpackage',
    '../valve-guide-pin',
    'valve-guide-pin.job.json',
    '%2e%2e',
    'bench-lathe',
    '__proto__',
  ])('knows no job %s', async (id) => {
    for (const rest of ['', '/packet.pdf', '/drawing.svg']) await refusalOf(await get(`/api/jobs/${id}${rest}`), 404);
  });
});

describe('a job sent to be assessed', () => {
  it('answers as for the same job in the store', async () => {
    const stored = await pageOf(await get('/api/jobs/plunger'));
    expect(stored).toEqual({
      ...(await pageOf(await post('/api/assess', text('plunger')))),
      id: 'plunger',
      revision: 1,
    });
  });

  it('follows a value typed anew', async () => {
    const job = text('valve-guide-pin').replace('"6 f7"', '"6,5 h6"');
    const page = await pageOf(await post('/api/assess', job));
    // ISO 286-2: h6 over 6 to 10 mm is 0/−9 µm.
    expect(page.sizes.find((s) => s.id === 'guide.diameter')).toMatchObject({ most: '6.500', least: '6.491' });
    expect(page.drawing).toContain('Ø6.5 h6');
    expect(page.drawing).not.toContain('Ø6 f7');
  });

  it('refuses a value that is no size, naming its place and something that would do', async () => {
    const job = text('valve-guide-pin').replace('"6 f7"', '"six or so"');
    const { message, issues } = await refusalOf(await post('/api/assess', job), 422);
    expect(issues).toEqual([expect.objectContaining({ path: 'part.outside[4].diameter', value: '"six or so"' })]);
    expect(message).toContain('part.outside[4].diameter');
  });

  it('takes a job in which almost nothing is entered', async () => {
    const bare = { sparewright: 'job', version: 1, title: 'Nothing yet', units: 'mm', hazard: 'ordinary' };
    const page = await pageOf(await post('/api/assess', JSON.stringify(bare)));
    expect(page.drawing).toBeNull();
    expect(page.missing.length).toBeGreaterThan(3);
  });

  it('writes what a person typed into the drawing as text', async () => {
    const job = JSON.parse(text('plunger'));
    job.part.name = '<script>alert(1)</script>';
    const { drawing } = await pageOf(await post('/api/assess', JSON.stringify(job)));
    expect(drawing).toContain('&lt;script&gt;');
    expect(drawing).not.toContain('<script');
  });
});

describe('what can be taken along', () => {
  it.each(['A4', 'Letter'])('a packet on %s', async (paper) => {
    const response = await get(`/api/jobs/plunger/packet.pdf?paper=${paper}`);
    expect(response.headers.get('content-type')).toBe('application/pdf');
    expect(response.headers.get('content-disposition')).toContain(`packet-${paper}.pdf`);
    const bytes = Buffer.from(await response.arrayBuffer());
    expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('no packet on other paper', async () => {
    const { issues } = await refusalOf(await get('/api/jobs/plunger/packet.pdf?paper=A0'), 400);
    expect(issues[0]?.expected).toContain('Letter');
  });

  it('a drawing in black on white', async () => {
    const response = await get('/api/jobs/plunger/drawing.svg');
    expect(response.headers.get('content-type')).toBe('image/svg+xml');
    const svg = await response.text();
    expect(svg).toMatch(/^<svg .*width="297mm"/);
    expect(svg).not.toContain('var(--');
  });
});

describe('questions', () => {
  it('answers one of the register, with its sources', async () => {
    const response = await post('/api/ask/limits', JSON.stringify({ size: '50 f7' }));
    expect(response.status).toBe(200);
    // ISO 286-2: f7 over 30 to 50 mm is −25/−50 µm.
    expect(await response.json()).toMatchObject({
      answer: { upper: -0.025, lower: -0.05 },
      sources: expect.arrayContaining([expect.objectContaining({ kind: expect.any(String) })]),
    });
  });

  it('refuses input that does not fit the question, naming the field', async () => {
    const { issues } = await refusalOf(await post('/api/ask/limits', JSON.stringify({ size: 50, colour: 'red' })), 422);
    expect(issues.length).toBeGreaterThan(0);
  });

  it('refuses a name that is no question', async () => {
    const { issues } = await refusalOf(await post('/api/ask/no-such-thing', '{}'), 422);
    expect(issues[0]?.expected).toContain('question');
  });
});

describe('who is answered', () => {
  it('nobody who asks by another name', async () => {
    await refusalOf(await get('/api/jobs', { host: 'evil.example' }), 421);
    await refusalOf(await get('/', { host: '127.0.0.1:9999' }), 421);
    await refusalOf(await get('/api/jobs', { host: '' }), 421);
  });

  it('no page of another site', async () => {
    await refusalOf(await post('/api/assess', text('plunger'), { origin: 'http://evil.example' }), 403);
    await refusalOf(await get('/api/jobs', { origin: 'null' }), 403);
    await refusalOf(await get('/api/jobs', { origin: 'http://127.0.0.1:5000' }), 403);
  });

  it('no picture or frame on a page of another site', async () => {
    for (const site of ['cross-site', 'same-site'])
      await refusalOf(await get('/api/backup', { 'sec-fetch-site': site, 'sec-fetch-mode': 'no-cors' }), 403);
    for (const site of ['same-origin', 'none'])
      expect((await get('/api/integrity', { 'sec-fetch-site': site })).status).toBe(200);
    // A link from elsewhere to the page itself is a link.
    expect([200, 503]).toContain((await get('/', { 'sec-fetch-site': 'cross-site' })).status);
  });

  it('its own page', async () => {
    expect((await get('/api/jobs', { origin: 'http://127.0.0.1:4180' })).status).toBe(200);
    expect((await get('/health')).status).toBe(200);
  });

  it('with headers that keep the page to itself, refusals too', async () => {
    for (const response of [await get('/health'), await get('/api/none'), await get('/', { host: 'evil.example' })]) {
      const policy = response.headers.get('content-security-policy') ?? '';
      expect(policy).toContain("default-src 'none'");
      expect(policy).toContain("script-src 'self'");
      expect(policy).toContain("frame-ancestors 'none'");
      expect(policy).not.toContain('unsafe');
      expect(response.headers.get('x-content-type-options')).toBe('nosniff');
      expect(response.headers.get('referrer-policy')).toBe('no-referrer');
    }
  });
});

describe('what is refused before anything is computed', () => {
  it('a body that is not JSON', async () => {
    await refusalOf(await post('/api/assess', text('plunger'), { 'content-type': 'text/plain' }), 415);
    const { issues } = await refusalOf(await post('/api/assess', '{"sparewright": "job",'), 422);
    expect(issues[0]?.expected).toContain('JSON');
  });

  it('a body larger than any job', async () => {
    await refusalOf(await post('/api/assess', `"${'a'.repeat(1.1e6)}"`), 413);
  });

  it('a body nested past all sense', async () => {
    const deep = `${'['.repeat(200_000)}${']'.repeat(200_000)}`;
    await refusalOf(await post('/api/assess', deep), 422);
    await refusalOf(await post('/api/ask/fit', deep), 422);
  });

  it.each(['PUT', 'DELETE', 'PATCH', 'POST'])('the method %s where there is none', async (method) => {
    expect((await send(method, '/')).status).toBe(404);
  });
});

describe('the screens', () => {
  it.each(['/../package.json', '/..%2f..%2fpackage.json', '/assets/../../src/main.tsx', '/%00', '/index.html/x'])(
    'are all there is: %s leads nowhere',
    async (path) => {
      expect([404, 503]).toContain((await get(path)).status);
      expect(ownFaults()).toEqual([]);
    },
  );
});
