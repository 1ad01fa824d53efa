/** The built program, as a person starts it. */
import { execFile, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { examplesFolder, jobNames } from './mutations.ts';

const program = fileURLToPath(new URL('../bin/sparewright.js', import.meta.url));
const root = fileURLToPath(new URL('../../../', import.meta.url));
const example = (name: string) => fileURLToPath(new URL(name, examplesFolder));
const pin = example('valve-guide-pin.job.json');

let folder = '';
beforeAll(async () => {
  const built = await node([join(root, 'scripts/build.mjs')]);
  expect(built.code, built.err).toBe(0);
  folder = mkdtempSync(join(tmpdir(), 'sparewright-built-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

function node(args: readonly string[], env: Readonly<Record<string, string>> = {}, input = ''): Promise<Ran> {
  return new Promise((resolve) => {
    const options = { cwd: root, env: { ...process.env, ...env }, maxBuffer: 2 ** 28 };
    const child = execFile(process.execPath, args, options, (error, out, err) => {
      resolve({ code: typeof error?.code === 'number' ? error.code : error ? -1 : 0, out, err });
    });
    child.stdin?.on('error', () => undefined);
    child.stdin?.end(input);
  });
}

const sparewright = (args: readonly string[], env?: Readonly<Record<string, string>>, input?: string) =>
  node([program, ...args], env, input);

describe('exit codes', () => {
  test('0 for an answer, 2 for what will not do, 3 for what cannot be written', async () => {
    expect((await sparewright(['ask', 'limits', '--json', '{"size":"40 f7"}'])).code).toBe(0);
    const bad = await sparewright(['ask', 'limits', '--json', '{"size":']);
    expect(bad).toMatchObject({ code: 2, out: '' });
    expect(bad.err.trimEnd().split('\n')).toHaveLength(1);
    expect((await sparewright(['drawing', pin, '-o', join(folder, 'no', 'x.svg')])).code).toBe(3);
    expect((await sparewright(['no-such-command'])).code).toBe(2);
    expect((await sparewright([])).code).toBe(0);
  });

  test('1 from check when a finding says stop', async () => {
    const document = JSON.parse(readFileSync(pin, 'utf8'));
    document.route = { stockDiameter: 5 };
    const file = join(folder, 'thin.job.json');
    writeFileSync(file, JSON.stringify(document));
    const { code, out } = await sparewright(['check', file, '--workshop', example('bench-lathe.workshop.json')]);
    expect(out).toContain('STOP');
    expect(code).toBe(1);
  });
});

test.each(jobNames)('%s: the packet is a PDF on the paper asked for', async (name) => {
  const file = join(folder, `${name}.pdf`);
  const { code, err } = await sparewright(['packet', example(`${name}.job.json`), '-o', file, '--paper', 'letter']);
  expect(err).toBe('');
  expect(code).toBe(0);
  const pdf = readFileSync(file);
  expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
  expect(pdf.subarray(-8).toString()).toContain('%%EOF');
  // A Letter sheet is 612 by 792 points, upright or lying.
  const boxes = [...pdf.toString('latin1').matchAll(/\/MediaBox *\[([^\]]*)\]/g)].map((m) => m[1]?.trim());
  expect(boxes.length).toBeGreaterThan(3);
  for (const box of boxes) expect(box).toMatch(/^0 0 (612(\.0)? 792(\.0)?|792(\.0)? 612(\.0)?)$/);
  expect(readdirSync(folder).filter((f) => f.endsWith('.part'))).toEqual([]);
});

test('a packet that cannot be written leaves nothing behind', async () => {
  const { code, err } = await sparewright(['packet', pin, '-o', join(folder, 'no', 'x.pdf')]);
  expect(code).toBe(3);
  expect(err).toContain('its folder does not exist');
  expect(existsSync(join(folder, 'no'))).toBe(false);
});

test('colours stay out of a pipe, and no progress is written where nobody watches', async () => {
  const { out, err } = await sparewright(['assess', pin], { TERM: 'xterm-256color' });
  expect(out).not.toContain('\u001b');
  expect(err).toBe('');
});

test('a reader that stops early is no fault', async () => {
  const child = spawn(process.execPath, [program, 'ask', '--lines'], { cwd: root, stdio: ['pipe', 'pipe', 'pipe'] });
  let err = '';
  child.stderr.on('data', (chunk) => {
    err += String(chunk);
  });
  child.stdin.on('error', () => undefined);
  child.stdin.write('{"ask":"limits","size":"40 f7"}\n'.repeat(20_000));
  child.stdin.end();
  child.stdout.once('data', () => child.stdout.destroy());
  const code = await new Promise((resolve) => child.on('exit', resolve));
  expect(err).toBe('');
  expect(code).toBe(0);
});

test('ask --lines answers the first line before the last has come', async () => {
  const child = spawn(process.execPath, [program, 'ask', '--lines'], { cwd: root, stdio: ['pipe', 'pipe', 'inherit'] });
  const first = new Promise<string>((resolve) => child.stdout.once('data', (chunk) => resolve(String(chunk))));
  child.stdin.write('{"ask":"limits","size":"40 f7"}\n');
  expect(JSON.parse(await first)).toMatchObject({ ask: 'limits', ok: true });
  child.stdin.end();
  expect(await new Promise((resolve) => child.on('exit', resolve))).toBe(0);
});

test('ten thousand lines in, ten thousand out, in seconds', async () => {
  const began = performance.now();
  const { out, code } = await sparewright(['ask', '--lines'], {}, '{"ask":"limits","size":"40 f7"}\n'.repeat(10_000));
  expect(code).toBe(0);
  expect(out.trimEnd().split('\n')).toHaveLength(10_000);
  expect(performance.now() - began).toBeLessThan(10_000);
});

test('serve answers on loopback and stops when it is asked to', async () => {
  const child = spawn(process.execPath, [program, 'serve', '--port', '0', '--data', join(folder, 'data')], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const said = await new Promise<string>((resolve) => child.stdout.once('data', (chunk) => resolve(String(chunk))));
  const address = /http:\/\/127\.0\.0\.1:\d+/.exec(said)?.[0] ?? '';
  const response = await fetch(address);
  expect(response.status).toBe(200);
  await response.text();
  child.kill('SIGTERM');
  expect(await new Promise((resolve) => child.on('exit', resolve))).toBe(0);
});

test('serve on the network shows a pairing code, keeps data in the folder it was given, and says when that cannot be used', async () => {
  const data = join(folder, 'shed');
  const child = spawn(process.execPath, [program, 'serve', '--port', '0', '--host', '0.0.0.0', '--data', data], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const said = await new Promise<string>((resolve) => child.stdout.once('data', (chunk) => resolve(String(chunk))));
  expect(said).toMatch(/^Pairing code: {2}[2-9A-Z]{4}-[2-9A-Z]{4}$/m);
  expect(said).toContain(`Your data: ${data}`);
  child.kill('SIGTERM');
  expect(await new Promise((resolve) => child.on('exit', resolve))).toBe(0);
  expect(existsSync(join(data, 'sparewright.db'))).toBe(true);
  writeFileSync(join(data, 'sparewright.db'), 'no database');
  const { code, out, err } = await sparewright(['serve', '--port', '0', '--data', data]);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err.trimEnd().split('\n')).toEqual([expect.stringContaining('a data folder that can be used')]);
});

test('a taken port is refused in one line', async () => {
  const child = spawn(process.execPath, [program, 'serve', '--port', '0', '--data', join(folder, 'data')], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const said = await new Promise<string>((resolve) => child.stdout.once('data', (chunk) => resolve(String(chunk))));
  const port = /127\.0\.0\.1:(\d+)/.exec(said)?.[1] ?? '';
  const { code, err } = await sparewright(['serve', '--port', port, '--data', join(folder, 'data')]);
  expect(code).toBe(2);
  expect(err).toContain('a port that no other program holds');
  child.kill('SIGTERM');
  await new Promise((resolve) => child.on('exit', resolve));
});

test('a question takes no more than ten times as long as starting node itself', async () => {
  // Held against node, so that it says the same on a busy machine: 0.26 s to 0.04 s on an idle one.
  const timed = async (work: () => Promise<Ran>): Promise<number> => {
    const began = performance.now();
    expect((await work()).code).toBe(0);
    return performance.now() - began;
  };
  const bare: number[] = [];
  const asked: number[] = [];
  for (let i = 0; i < 6; i++) {
    bare.push(await timed(() => node(['-e', '0'])));
    asked.push(await timed(() => sparewright(['ask', 'limits', '--json', '{"size":"40 f7"}'])));
  }
  expect(Math.min(...asked) / Math.min(...bare)).toBeLessThan(10);
});
