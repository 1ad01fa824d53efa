import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openStore } from '@sparewright/store/open-store';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { exampleDocument } from './mutations.ts';
import { runHere } from './terminal.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'sparewright-data-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const at = (name: string) => join(folder, name);

test('a backup restored elsewhere holds the job that was in it', async () => {
  const store = openStore({ folder: at('old') });
  const { id } = store.jobs.create(exampleDocument('plunger.job.json'), {});
  store.close();
  const backup = await runHere(['backup', at('all.backup'), '--data', at('old')]);
  expect(backup).toMatchObject({ code: 0, err: '' });
  expect(backup.out).toContain('1 job, 0 attachments');
  expect((await runHere(['restore', at('all.backup'), '--data', at('new')])).code).toBe(0);
  const restored = openStore({ folder: at('new') });
  expect(restored.jobs.get(id).document).toEqual(exampleDocument('plunger.job.json'));
  restored.close();
});

test('a backup never replaces a file that is there, and says so in one line', async () => {
  await runHere(['backup', at('all.backup'), '--data', at('old')]);
  const again = await runHere(['backup', at('all.backup'), '--data', at('old')]);
  expect(again.code).toBe(2);
  expect(again.err).toMatch(/^sparewright: There is a file .* already; choose another name\.\n$/);
});

test('a restore from nothing changes nothing', async () => {
  const { code, err } = await runHere(['restore', at('nothing.backup'), '--data', at('new')]);
  expect(code).toBe(2);
  expect(err).toContain('There is no file');
  expect(existsSync(join(at('new'), 'sparewright.db'))).toBe(false);
});
