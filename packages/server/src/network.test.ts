import { execFile, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { createRequire } from 'node:module';
import { connect } from 'node:net';
import { networkInterfaces, tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { gunzipSync } from 'node:zlib';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { CannotListen, openDataFolder, type Serving, serve } from './index.ts';

const folder = mkdtempSync(join(tmpdir(), 'slabwright-server-'));
const web = join(folder, 'web');
const served: Serving[] = [];
let count = 0;

beforeAll(() => {
  mkdirSync(join(web, 'assets'), { recursive: true });
  writeFileSync(join(web, 'index.html'), `<!doctype html><title>app</title>${'<p>floor</p>'.repeat(200)}`);
  writeFileSync(join(web, 'sw.js'), 'self.x = 1;');
  writeFileSync(join(web, 'assets', 'main-abc.js'), 'export const x = 1;\n'.repeat(100));
  writeFileSync(join(web, 'notes.md'), 'not for the wire');
  writeFileSync(join(folder, 'secret.json'), '{}');
});
afterEach(async () => {
  for (const one of served.splice(0)) await one.stop();
});
afterAll(() => rmSync(folder, { recursive: true }));

async function start(options: Partial<Parameters<typeof serve>[0]> = {}): Promise<Serving> {
  const data = join(folder, `data-${++count}`);
  const one = await serve({ data, port: 0, web, demo: false, log: (line) => expect(line).toBe('nothing'), ...options });
  served.push(one);
  return one;
}

/** Sends bytes as they are and gives the first line of the answer. */
function sent(port: number, text: string): Promise<string> {
  return new Promise((done, failed) => {
    const socket = connect(port, '127.0.0.1', () => socket.write(text));
    let heard = '';
    socket.setEncoding('latin1').on('data', (part: string) => {
      heard += part;
      if (heard.includes('\r\n')) socket.destroy();
    });
    socket.on('close', () => done(heard.split('\r\n')[0] ?? ''));
    socket.on('error', failed);
  });
}

describe('listening', () => {
  test('on this machine alone, unless told otherwise', async () => {
    const { port, address } = await start();
    expect(address).toBe(`http://127.0.0.1:${port}/`);
    const others = Object.values(networkInterfaces())
      .flatMap((list) => list ?? [])
      .filter(({ internal, family }) => !internal && family === 'IPv4');
    for (const { address: other } of others) await expect(fetch(`http://${other}:${port}/api/about`)).rejects.toThrow();
  });

  test('a taken port and an address of another machine are said with a way out, and the data folder is let go', async () => {
    const { port } = await start();
    const data = join(folder, 'refused');
    const trying = (options: object) => serve({ data, web, log: () => {}, ...options });
    await expect(trying({ port })).rejects.toThrow(/taken.*--port/);
    await expect(trying({ port: 0, host: '203.0.113.9' })).rejects.toThrow(/not an address of this machine/);
    await expect(trying({ port })).rejects.toBeInstanceOf(CannotListen);
  });

  test('what is no call at all is refused, and the next call is answered', async () => {
    const { port, address } = await start();
    expect(await sent(port, 'hello\r\n\r\n')).toContain('400');
    expect(await sent(port, 'GET http://[ HTTP/1.1\r\nHost: x\r\n\r\n')).toMatch(/ 40[03]/);
    expect(await sent(port, 'GET / HTTP/1.1\r\nHost: \u0000\r\n\r\n')).toContain('400');
    expect(await sent(port, `GET /${'x'.repeat(20_000)} HTTP/1.1\r\nHost: localhost\r\n\r\n`)).toContain('431');
    expect((await fetch(`${address}api/about`)).status).toBe(200);
  });

  test('stopping lets a write that runs end, and then lets the data go', async () => {
    const data = join(folder, 'stopped');
    const one = await serve({ data, port: 0, web, demo: false, log: () => {} });
    const body = JSON.stringify({ expected: 0, title: 'a', body: 'x'.repeat(1_000_000) });
    const running = request({
      host: '127.0.0.1',
      port: one.port,
      method: 'PUT',
      path: '/api/documents/job/a',
      headers: {
        'content-type': 'application/json',
        'content-length': body.length,
        origin: one.address.slice(0, -1),
        expect: '100-continue',
      },
    });
    const answered = new Promise<number | undefined>((done, failed) => {
      running.on('response', ({ statusCode }) => done(statusCode)).on('error', failed);
    });
    running.flushHeaders();
    // The server has the head of the call; its body comes only while it is stopping.
    await new Promise((done) => running.once('continue', done));
    const stopped = one.stop();
    running.end(body);
    expect(await answered).toBe(200);
    await stopped;
    const store = await openDataFolder(data);
    expect(await store.get('job', 'a')).toMatchObject({ revision: 1 });
    await store.close();
  });
});

describe('the built app', () => {
  test('the page is asked for anew each time, and costs nothing when it has not changed', async () => {
    const { address } = await start();
    const first = await fetch(address);
    expect(first.headers.get('content-type')).toContain('text/html');
    expect(first.headers.get('cache-control')).toBe('no-cache');
    const tag = first.headers.get('etag') ?? '';
    const again = await fetch(address, { headers: { 'if-none-match': `"other", W/${tag}` } });
    expect(again.status).toBe(304);
    expect(await again.text()).toBe('');
    expect((await fetch(`${address}sw.js`)).headers.get('cache-control')).toBe('no-cache');
  });

  test('files named by their content are kept for a year', async () => {
    const { address } = await start();
    const { headers } = await fetch(`${address}assets/main-abc.js`);
    expect(headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
    expect(headers.get('content-type')).toContain('text/javascript');
  });

  test('packed for those who take it, plain for the others, each under its own tag', async () => {
    const { port } = await start();
    const asked = (encoding: string) =>
      new Promise<{ headers: NodeJS.Dict<string | string[]>; bytes: Buffer }>((done, failed) => {
        request({ port, host: '127.0.0.1', headers: { 'accept-encoding': encoding } }, (answer) => {
          const parts: Buffer[] = [];
          answer.on('data', (part: Buffer) => parts.push(part));
          answer.on('end', () => done({ headers: answer.headers, bytes: Buffer.concat(parts) }));
        })
          .on('error', failed)
          .end();
      });
    const [packed, plain] = [await asked('gzip, br'), await asked('identity')];
    expect(packed.headers['content-encoding']).toBe('gzip');
    expect(plain.headers['content-encoding']).toBeUndefined();
    expect(gunzipSync(packed.bytes).equals(plain.bytes)).toBe(true);
    expect(packed.headers.etag).not.toBe(plain.headers.etag);
    expect(packed.headers.vary).toBe('Accept-Encoding');
  });

  test.each([
    '../secret.json',
    '..%2fsecret.json',
    'assets/..%2f..%2fsecret.json',
    'notes.md',
    'assets',
    '%00',
    '%2e%2e/secret.json',
  ])('nothing but its files is to be had: %s', async (path) => {
    const { port } = await start();
    expect(await sent(port, `GET /${path} HTTP/1.1\r\nHost: localhost\r\n\r\n`)).toMatch(/ 40[04] /);
  });

  test('not built: the page says how, and the calls answer', async () => {
    const { address, webBuilt } = await start({ web: join(folder, 'nowhere') });
    expect(webBuilt).toBe(false);
    const page = await fetch(address);
    expect(page.status).toBe(503);
    expect(await page.text()).toContain('npm start');
    expect((await fetch(`${address}api/about`)).status).toBe(200);
  });
});

describe('killed', () => {
  const packageFolder = join(dirname(fileURLToPath(import.meta.url)), '..');

  beforeAll(async () => {
    // The child is a process of its own and runs compiled code.
    const compiler = join(dirname(createRequire(import.meta.url).resolve('typescript/package.json')), 'bin', 'tsc');
    await promisify(execFile)(process.execPath, [compiler, '-b', packageFolder]);
  }, 120_000);

  test('in the midst of writes: every write it had answered is there, and the file opens', async () => {
    const data = join(folder, 'killed');
    const child = spawn(process.execPath, [join(packageFolder, 'dist', 'kill-child.js'), data]);
    const ended = new Promise<NodeJS.Signals | null>((done) => child.on('close', (_code, signal) => done(signal)));
    const address = await new Promise<string>((done) =>
      child.stdout.setEncoding('utf8').once('data', (line: string) => done(line.trim())),
    );
    const headers = { 'content-type': 'application/json', origin: address.slice(0, -1) };
    const acknowledged = new Set<string>();
    const write = async (id: string): Promise<void> => {
      const body = JSON.stringify({ expected: 0, title: id, body: { id, filling: id.repeat(200) } });
      const answer = await fetch(`${address}api/documents/job/${id}`, { method: 'PUT', headers, body });
      if (answer.status === 200) acknowledged.add(id);
      if (acknowledged.size === 40) child.kill('SIGKILL');
    };
    const all = Array.from({ length: 400 }, (_, index) => write(`job-${index}`));
    const ends = await Promise.allSettled(all);
    expect(await ended).toBe('SIGKILL');
    expect(ends.some(({ status }) => status === 'rejected')).toBe(true);
    expect(acknowledged.size).toBeGreaterThanOrEqual(40);

    const store = await openDataFolder(data);
    for (const id of acknowledged) {
      expect(await store.get('job', id)).toMatchObject({ revision: 1, body: { id, filling: id.repeat(200) } });
    }
    // What was not answered is there whole or not at all.
    for (const { body } of (await store.exportAll()).documents) {
      const { id, filling } = body as { id: string; filling: string };
      expect(filling).toBe(id.repeat(200));
    }
    await store.close();
  });
});
