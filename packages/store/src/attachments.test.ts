import { existsSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { jobDocument, picture, temporaryFolder, temporaryStore } from '../test/temporary.ts';
import { largestAttachment } from './attachments.ts';

const png = { type: 'image/png', name: 'worn-end.png' };
const far = new Date('2100-01-01');

describe('an attachment', () => {
  test('is named by the SHA-256 of its content [FIPS 180-4: that of "abc"]', () => {
    const { attachments } = temporaryStore();
    const { hash } = attachments.put(Buffer.from('abc'), { type: 'text/plain', name: 'note.txt' });
    expect(hash).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    expect(attachments.get(hash)).toMatchObject({ name: 'note.txt', size: 3, bytes: Buffer.from('abc') });
    expect(attachments.get('0'.repeat(64))).toBeUndefined();
  });

  test('that comes twice is kept once', () => {
    const folder = temporaryFolder();
    const { attachments } = temporaryStore(folder);
    attachments.put(picture(), png);
    attachments.put(picture(), { ...png, name: 'again.png' });
    expect(readdirSync(join(folder, 'attachments'))).toHaveLength(1);
  });

  test('belongs to the jobs it is linked to until it is taken out', () => {
    const { jobs, attachments } = temporaryStore();
    const { id } = jobs.create(jobDocument(), {});
    const { hash } = attachments.put(picture(), png);
    attachments.link(id, hash);
    attachments.link(id, hash);
    expect(attachments.of(id)).toMatchObject([{ hash, ...png }]);
    attachments.unlink(id, hash);
    expect(attachments.of(id)).toEqual([]);
    attachments.link(id, hash);
    expect(attachments.of(id)).toHaveLength(1);
    expect(() => attachments.link(id, '0'.repeat(64))).toThrow('The file is not here');
    expect(() => attachments.link('nowhere', hash)).toThrow('There is no job nowhere.');
  });

  test.each([
    [Buffer.from('<script>'), 'image/png', 'is not image/png'],
    [Buffer.from('<svg/>'), 'image/svg+xml', 'Files of type image/svg+xml are not kept'],
    [Buffer.from([0xff, 0xfe]), 'text/plain', 'is not text/plain'],
    [Buffer.alloc(largestAttachment + 1), 'image/png', 'at most 25000000 are kept'],
  ])('%#: content that is not what it says, or may run, or is too large is refused', (bytes, type, says) => {
    const { attachments } = temporaryStore();
    expect(() => attachments.put(bytes, { type, name: 'x' })).toThrow(says);
  });

  test('loses folders and signs from its name', () => {
    const { attachments } = temporaryStore();
    expect(attachments.put(picture(), { ...png, name: '../../etc/pass"wd\n.png' }).name).toBe('passwd.png');
  });

  test('damaged on the disk is not handed out as if it were whole', () => {
    const folder = temporaryFolder();
    const { attachments, check } = temporaryStore(folder);
    const { hash } = attachments.put(picture(), png);
    const file = join(folder, 'attachments', hash);
    writeFileSync(file, 'something else');
    expect(() => attachments.get(hash)).toThrow('is not what it was');
    expect(check('thorough').problems).toHaveLength(1);
    rmSync(file);
    expect(check('quick').problems).toEqual([`attachment worn-end.png: The file ${hash} is gone from the disk.`]);
    attachments.put(picture(), png);
    expect(check('thorough').problems).toEqual([]);
  });
});

describe('sweeping', () => {
  test('removes what nothing refers to, and never what a job, a revision or an entry speaks of', () => {
    const folder = temporaryFolder();
    const { jobs, attachments, benchLog, check } = temporaryStore(folder);
    const hashes = [0, 1, 2, 3, 4].map((n) => attachments.put(picture(n), png).hash);
    const [linked = '', unlinked = '', noted = '', logged = '', unused = ''] = hashes;
    const { id } = jobs.create(jobDocument({ notes: `see ${noted}` }), {});
    attachments.link(id, linked);
    attachments.link(id, unlinked);
    attachments.unlink(id, unlinked);
    jobs.save(id, 1, jobDocument(), {});
    benchLog.append([{ id: 'a', job: id, at: '2026-03-01T09:30:00Z', content: { photo: logged } }]);
    jobs.remove(id);
    expect(attachments.sweep(new Date(0))).toEqual([]);
    expect(attachments.sweep(far)).toEqual([unused]);
    expect(hashes.map((hash) => existsSync(join(folder, 'attachments', hash)))).toEqual([
      true,
      true,
      true,
      true,
      false,
    ]);
    expect(check('thorough').problems).toEqual([]);
  });

  test('removes what a killed process left half written', () => {
    const folder = temporaryFolder();
    const { attachments } = temporaryStore(folder);
    const left = join(folder, 'attachments', 'ab.123.unfinished');
    writeFileSync(left, 'half');
    attachments.sweep(far);
    expect(existsSync(left)).toBe(false);
  });
});
