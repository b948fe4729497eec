import { request } from 'node:http';
import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { TestBench } from './bench-client.ts';

const bench = new TestBench();
beforeAll(() => bench.open());
afterAll(() => bench.close());

interface Raw {
  status: number;
  headers: Record<string, string | string[] | undefined>;
  body: string;
}

/** `fetch` does not let a caller forge Host; this does. */
function raw(path: string, headers: Record<string, string>, method = 'GET', body?: string): Promise<Raw> {
  const { port } = new URL(bench.address);
  return new Promise((resolve, reject) => {
    const req = request(
      { host: '127.0.0.1', port, path, method, headers, setHost: !('host' in headers) },
      (res) => {
        let text = '';
        res.setEncoding('utf8');
        res.on('data', (chunk: string) => (text += chunk));
        res.on('end', () => resolve({ status: res.statusCode ?? 0, headers: res.headers, body: text }));
      },
    );
    req.on('error', reject);
    req.end(body);
  });
}

describe('the door', () => {
  it('listens on 127.0.0.1 by number', () => {
    expect(new URL(bench.address).hostname).toBe('127.0.0.1');
  });

  it.each([
    'evil.example',
    'evil.example:80',
    '127.0.0.1.evil.example',
    'localhost.evil.example',
    '',
    '0.0.0.0',
    '[::]',
  ])('refuses the Host %j, so that a rebound name reads nothing', async (host) => {
    const answer = await raw('/api/state', { host });
    expect(answer.status).toBe(host === '' ? 403 : 403);
    expect(answer.headers['content-type']).toMatch(/application\/problem\+json/);
    expect(answer.body).not.toContain('storeFile');
  });

  it('is not moved by a forwarded Host', async () => {
    const answer = await raw('/api/state', { host: 'evil.example', 'x-forwarded-host': '127.0.0.1' });
    expect(answer.status).toBe(403);
  });

  it.each(['http://evil.example', 'null', 'https://127.0.0.1', 'http://127.0.0.1:1', 'http://localhost'])(
    'refuses the Origin %j for reading and for commands',
    async (origin) => {
      const { host } = new URL(bench.address);
      for (const method of ['GET', 'POST']) {
        const answer = await raw(
          method === 'GET' ? '/api/state' : '/api/demo-rack',
          { host, origin },
          method,
        );
        expect(answer.status).toBe(403);
      }
    },
  );

  it('refuses a page of another site even where its request carries no Origin', async () => {
    const { host } = new URL(bench.address);
    for (const site of ['cross-site', 'same-site']) {
      expect((await raw('/api/state', { host, 'sec-fetch-site': site })).status).toBe(403);
    }
    expect((await raw('/api/state', { host, 'sec-fetch-site': 'same-origin' })).status).toBe(200);
    expect((await raw('/api/state', { host, 'sec-fetch-site': 'none' })).status).toBe(200);
  });

  it('lets its own page in, by number and by name', async () => {
    const { host, port } = new URL(bench.address);
    expect((await raw('/api/state', { host, origin: `http://${host}` })).status).toBe(200);
    const name = `localhost:${port}`;
    expect((await raw('/api/state', { host: name, origin: `http://${name}` })).status).toBe(200);
  });

  it('asks for no CORS and allows none', async () => {
    const { host } = new URL(bench.address);
    const answer = await raw('/api/state', { host });
    expect(Object.keys(answer.headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
    const preflight = await raw('/api/demo-rack', { host, origin: 'http://evil.example' }, 'OPTIONS');
    expect(preflight.status).toBe(403);
  });

  it('sends a policy without inline or foreign scripts, and no name of the framework', async () => {
    const { host } = new URL(bench.address);
    const { headers } = await raw('/api/health', { host });
    const policy = String(headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self';");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toContain('unsafe');
    expect(headers['x-powered-by']).toBeUndefined();
    expect(headers['x-content-type-options']).toBe('nosniff');
  });

  it('refuses a body that is not JSON, is sent as something else, or holds what no schema knows', async () => {
    const { host } = new URL(bench.address);
    const json = { host, 'content-type': 'application/json' };
    const broken = await raw('/api/tubes', json, 'POST', '{"label":');
    expect(broken.status).toBe(400);
    expect((JSON.parse(broken.body) as { detail: string }).detail).toBe(
      'The body is not JSON; send a JSON document.',
    );
    expect(
      (await raw('/api/tubes', { host, 'content-type': 'text/plain' }, 'POST', '{"label":"x"}')).status,
    ).toBe(400);
    expect((await raw('/api/tubes', json, 'POST', '"x"')).status).toBe(400);
    const more = await raw('/api/tubes', json, 'POST', '{"label":"x","admin":true}');
    expect(more.status).toBe(400);
    expect(more.body).toContain('admin');
    const polluted = await raw('/api/tubes', json, 'POST', '{"label":"x","__proto__":{"role":"white"}}');
    expect(polluted.status).toBe(400);
  });

  it('refuses a body over the limit and stays up', async () => {
    const { host } = new URL(bench.address);
    const big = `{"fileName":"x","text":"${'x'.repeat(25 * 1024 * 1024)}"}`;
    const answer = await raw('/api/imports', { host, 'content-type': 'application/json' }, 'POST', big);
    expect(answer.status).toBe(413);
    expect((await raw('/api/health', { host })).status).toBe(200);
  });

  it('gives no file outside the built pages, however the path is written', async () => {
    const { host } = new URL(bench.address);
    const paths = [
      '/../package.json',
      '/%2e%2e/package.json',
      '/..%2fpackage.json',
      '/..%5cpackage.json',
      '/assets/../../../package.json',
      '/%00',
      '/.git/config',
    ];
    for (const path of paths) {
      const answer = await raw(path, { host });
      expect(answer.body, path).not.toContain('"dependencies"');
      expect(answer.body, path).not.toContain('[core]');
      expect([200, 400, 403, 404, 503], path).toContain(answer.status);
      if (answer.status === 200) expect(answer.body, path).toContain('<!doctype html>');
    }
  });

  it('answers a broken percent code and an unknown path with one sentence and no stack', async () => {
    const { host } = new URL(bench.address);
    for (const path of ['/api/tubes/%E0%A4%A', '/api/nothing', '/api/tubes/nobody']) {
      const answer = await raw(path, { host });
      expect(answer.status).toBeGreaterThanOrEqual(400);
      expect(answer.status).toBeLessThan(500);
      expect(answer.headers['content-type']).toMatch(/application\/problem\+json/);
      expect(answer.body).not.toMatch(/ at .*\.ts|node_modules/);
    }
  });

  it('survives bytes that are no HTTP at all', async () => {
    const { host, port } = new URL(bench.address);
    await new Promise<void>((resolve) => {
      const socket = connect(Number(port), '127.0.0.1', () => socket.end('\x00\xff SCPI *IDN?\r\n\r\n'));
      socket.on('error', () => undefined);
      socket.on('close', () => resolve());
      socket.resume();
    });
    expect((await raw('/api/health', { host })).status).toBe(200);
  });
});

describe('the pages', () => {
  it('say what to run when they were never built', async () => {
    const bare = new TestBench();
    await bare.open({ webFolder: bare.folder });
    const answer = await fetch(bare.address);
    expect(answer.status).toBe(503);
    expect(await answer.text()).toContain('run \\"npm start\\"');
    await bare.close();
  });
});
