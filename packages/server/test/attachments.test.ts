import { createHash } from 'node:crypto';
import { afterAll, describe, expect, it } from 'vitest';
import { answerOf, picture } from './documents.ts';
import { openApp } from './test-app.ts';

const app = openApp({ bare: true });
afterAll(() => app.close());

const put = (bytes: Uint8Array<ArrayBuffer>, query: string) =>
  app.post(`/api/attachments?${query}`, bytes, { 'content-type': 'application/octet-stream' });

describe('a photograph', () => {
  it('is named by the SHA-256 of its content, kept once, and comes back byte for byte', async () => {
    const bytes = picture(1);
    const expected = createHash('sha256').update(bytes).digest('hex');
    for (let i = 0; i < 2; i++)
      expect(await answerOf(await put(bytes, 'name=worn.png&type=image/png'), 201)).toEqual({ hash: expected });
    const response = await app.get(`/api/attachments/${expected}`);
    expect(new Uint8Array(await response.arrayBuffer())).toEqual(bytes);
    expect(response.headers.get('content-type')).toBe('image/png');
    expect(response.headers.get('cache-control')).toContain('immutable');
    expect(response.headers.get('cache-control')).toContain('private');
  });

  it.each([
    ['name=x.html&type=text/html', 422],
    ['name=x.svg&type=image/svg%2Bxml', 422],
    ['name=x.png', 422],
    ['type=image/jpeg', 415],
  ])('is refused when it is none: %s', async (query, status) => {
    await answerOf(await put(picture(2), query), status);
  });

  it('is refused when it is larger than any photograph, and nothing of it stays', async () => {
    const large = new Uint8Array(20_000_001);
    large.set(picture());
    const { message } = await answerOf(await put(large, 'type=image/png'), 413);
    expect(message).toContain('20 MB');
    expect(app.store().check('quick').attachments).toBe(1);
  });

  it.each(['../../sparewright.db', '..%2f..%2fsparewright.db', '%2e%2e', '%00', 'a'.repeat(64), '__proto__'])(
    'is not there under the name %s',
    async (name) => {
      await answerOf(await app.get(`/api/attachments/${name}`), 404);
    },
  );

  it('leads out of no folder by its name', async () => {
    const { hash } = await answerOf(
      await put(picture(3), 'name=..%2F..%2Fx%22%0D%0Aset-cookie:%20a=b.png&type=image/png'),
      201,
    );
    const response = await app.get(`/api/attachments/${hash}`);
    expect(response.headers.get('content-disposition')).toMatch(/^inline; filename="[a-z0-9-]+"$/);
    expect(response.headers.get('set-cookie')).toBeNull();
  });
});
