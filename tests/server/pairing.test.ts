/**
 * Pairing over real HTTP, on two listeners of one bench: 127.0.0.1 for the computer, 127.0.0.2 as the network.
 * What a cookie must say: RFC 6265 and, for SameSite, its revision rfc6265bis. Rebinding: the Host is checked.
 */
import { request } from 'node:http';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CODE_ALPHABET, CODE_LASTS } from '../../server/pairing/one-time-code.ts';
import { lanAddress } from '../../server/pairing/lan-address.ts';
import { parseServeOptions, serve } from '../../server/serve.ts';
import { TestBench } from './bench-client.ts';

const PHONES = '127.0.0.2';
let clock = Date.UTC(2026, 5, 1);
const bench = new TestBench();
const bare = new TestBench();
let network: string;

beforeAll(async () => {
  await bench.open({ pair: { host: PHONES, now: () => clock } });
  await bare.open();
  network = bench.started.phoneAddress;
});
afterAll(async () => {
  await bench.close();
  await bare.close();
});

interface Raw {
  status: number;
  headers: Record<string, string | string[] | undefined>;
  body: string;
}

function raw(
  address: string,
  path: string,
  headers: Record<string, string> = {},
  method = 'GET',
  body?: unknown,
) {
  const { hostname, port } = new URL(address);
  return new Promise<Raw>((resolve, reject) => {
    const json = body === undefined ? {} : { 'content-type': 'application/json' };
    const req = request(
      { host: hostname, port, path, method, headers: { ...json, ...headers }, setHost: !('host' in headers) },
      (res) => {
        let text = '';
        res.setEncoding('utf8');
        res.on('data', (chunk: string) => (text += chunk));
        res.on('end', () => resolve({ status: res.statusCode ?? 0, headers: res.headers, body: text }));
      },
    );
    req.on('error', reject);
    req.end(body === undefined ? undefined : JSON.stringify(body));
  });
}

const shown = async (): Promise<string> => (await bench.get('showPairingCode')).code!.code;
const send = (code: string, headers: Record<string, string> = {}) =>
  raw(network, '/api/pairing/phones', headers, 'POST', { code });
/** A code that is certainly another. */
const other = (code: string): string =>
  (code[0] === CODE_ALPHABET[0] ? CODE_ALPHABET[1]! : CODE_ALPHABET[0]!) + code.slice(1);
/** Pairs, and gives the cookie a browser would send back. */
async function paired(): Promise<{ cookie: string; said: string }> {
  const answer = await send(await shown());
  expect(answer.status).toBe(204);
  const said = String(answer.headers['set-cookie']);
  return { cookie: said.split(';')[0]!, said };
}

describe('pairing is off by default', () => {
  it('listens on loopback alone and shows no code', async () => {
    expect(bare.started.phoneAddress).toBe('');
    expect(await bare.get('getPairing')).toEqual({ on: false, address: '', code: null, phones: [] });
    expect((await bare.refusal('showPairingCode')).detail).toContain('npm start -- --pair');
    await expect(raw(`http://${PHONES}:${new URL(bare.address).port}`, '/')).rejects.toThrow('ECONNREFUSED');
  });

  it('says what --pair-host takes, and listens nowhere otherwise', async () => {
    const said: string[] = [];
    const say = { out: () => undefined, err: (s: string) => void said.push(s) };
    expect(await serve(parseServeOptions(['--pair-host', PHONES]), say)).toBe(2);
    expect(await serve(parseServeOptions(['--pair', '--pair-host', '0.0.0.0']), say)).toBe(2);
    expect(await serve(parseServeOptions(['--pair', '--pair-host', '203.0.113.7']), say)).toBe(2);
    expect(await serve(parseServeOptions(['--pair', '--dev']), say)).toBe(2);
    expect(said[0]).toContain('add --pair');
    expect(said[1]).toContain('not an address of a private network');
  });

  it('takes the first private IPv4 of the computer when none is named (RFC 1918)', () => {
    const at = (address: string, family = 'IPv4', internal = false) => ({ address, family, internal });
    const machine = { lo: [at('127.0.0.1', 'IPv4', true)], w: [at('203.0.113.7'), at('fd00::7', 'IPv6')] };
    expect(lanAddress(undefined, machine)).toHaveProperty('refusal');
    expect(lanAddress(undefined, { ...machine, e: [at('172.32.0.1'), at('172.31.255.254')] })).toEqual({
      address: '172.31.255.254',
    });
    expect(lanAddress('fd00::7', machine)).toEqual({ address: 'fd00::7' });
    expect(lanAddress('kitchen', machine)).toHaveProperty('refusal');
  });
});

describe('without a token the network', () => {
  it.each(['/api/state', '/api/health', '/api/openapi.json', '/api/events', '/api/backup', '/index.html'])(
    'gets a problem detail for %s and nothing else',
    async (path) => {
      const answer = await raw(network, path);
      expect(answer.status).toBe(403);
      expect(answer.headers['content-type']).toMatch(/application\/problem\+json/);
      expect(JSON.parse(answer.body)).toMatchObject({ type: 'urn:tintladder:not-paired' });
      expect(answer.body).not.toContain('storeFile');
    },
  );

  it.each(['', 'x', 'A'.repeat(43), `${'A'.repeat(42)};`, '__proto__'])(
    'is not let in by the cookie %j',
    async (token) => {
      const answer = await raw(network, '/api/state', { cookie: `tintladder_phone=${token}` });
      expect(answer.status).toBe(403);
    },
  );

  it('refuses commands, too, and written with other letters', async () => {
    expect((await raw(network, '/api/demo-rack', {}, 'POST', {})).status).toBe(403);
    expect((await raw(network, '/API/state')).status).toBe(403);
    expect((await raw(network, '/api/pairing/phones/')).status).toBe(403);
    expect((await raw(network, '/api/pairing/code', {}, 'POST', {})).status).toBe(403);
  });
});

describe('a code', () => {
  it('has eight unambiguous characters, and stands in the address behind # alone', async () => {
    const { code } = await bench.get('showPairingCode');
    expect(code!.code).toMatch(new RegExp(`^[${CODE_ALPHABET}]{8}$`));
    expect(code!.url).toBe(`${network}/pair#${code!.code}`);
    expect(Date.parse(code!.expiresAt) - clock).toBe(CODE_LASTS);
    expect(CODE_ALPHABET).not.toMatch(/[01258OILZSBU]/);
  });

  it('pairs once: the cookie is HttpOnly and SameSite=Strict, holds 256 bits, and is stored hashed', async () => {
    const code = await shown();
    const answer = await send(` ${code.slice(0, 4).toLowerCase()}-${code.slice(4)}`);
    expect(answer.status).toBe(204);
    expect(answer.body).toBe('');
    const said = String(answer.headers['set-cookie']);
    expect(said).toMatch(/HttpOnly/);
    expect(said).toMatch(/SameSite=Strict/);
    const token = /tintladder_phone=([\w-]{43});/.exec(said)![1]!;
    const rows = bench.started.bench.db.prepare('select hex(token_hash) as h, * from paired_phone').all();
    expect(JSON.stringify(rows)).not.toContain(token);
    expect(JSON.stringify(rows)).not.toContain(Buffer.from(token, 'base64url').toString('hex').toUpperCase());
    expect((await raw(network, '/api/state', { cookie: `a=b; tintladder_phone=${token}` })).status).toBe(200);
    const again = await send(code);
    expect(again.status).toBe(403);
    expect(again.headers['set-cookie']).toBeUndefined();
    expect((await bench.get('getPairing')).code).toBeNull();
  });

  it('ends after five wrong tries, even for the right one', async () => {
    const code = await shown();
    for (let n = 1; n <= 5; n += 1) {
      const answer = await send(other(code));
      expect(answer.status).toBe(403);
      expect((await bench.get('getPairing')).code?.triesLeft).toBe(n === 5 ? undefined : 5 - n);
    }
    const late = await send(code);
    expect(late.status).toBe(403);
    expect(late.body).toContain('ask the computer for a new one');
    expect((await send(await shown())).status).toBe(204);
  });

  it('ends after five minutes, and when a new one is shown, or when it is put away', async () => {
    const code = await shown();
    clock += CODE_LASTS;
    expect((await send(code)).body).toContain('five minutes');
    const first = await shown();
    await shown();
    expect((await send(first)).status).toBe(403);
    const last = await shown();
    await bench.get('endPairingCode');
    expect((await send(last)).status).toBe(403);
  });

  it('refuses a body that is no code', async () => {
    await shown();
    expect((await raw(network, '/api/pairing/phones', {}, 'POST', { code: 'A'.repeat(65) })).status).toBe(
      400,
    );
    expect((await raw(network, '/api/pairing/phones', {}, 'POST', { code: ['A'] })).status).toBe(400);
  });

  it('is taken on the network address alone', async () => {
    const code = await shown();
    expect((await raw(bench.address, '/api/pairing/phones', {}, 'POST', { code })).status).toBe(403);
    expect((await send(code)).status).toBe(204);
  });
});

describe('a paired phone', () => {
  it('is held to Host and Origin all the same, so that a rebound name reads nothing', async () => {
    const { cookie } = await paired();
    const { host, port } = new URL(network);
    for (const foreign of [
      'evil.example',
      `evil.example:${port}`,
      `127.0.0.1:${port}`,
      `localhost:${port}`,
    ]) {
      expect((await raw(network, '/api/state', { cookie, host: foreign })).status, foreign).toBe(403);
    }
    for (const origin of ['http://evil.example', 'null', `https://${host}`, bench.address]) {
      expect((await raw(network, '/api/state', { cookie, host, origin })).status, origin).toBe(403);
      const code = await shown();
      expect((await send(code, { host, origin })).status, origin).toBe(403);
    }
    expect((await raw(network, '/api/state', { cookie, host, origin: `http://${host}` })).status).toBe(200);
    expect((await raw(network, '/api/state', { cookie, host, 'sec-fetch-site': 'cross-site' })).status).toBe(
      403,
    );
    // The computer's own listener does not answer to the network's name.
    expect((await raw(bench.address, '/api/state', { host })).status).toBe(403);
  });

  it('may neither see nor show codes, nor let go of phones', async () => {
    const { cookie } = await paired();
    await shown();
    const { phones } = await bench.get('getPairing');
    expect((await raw(network, '/api/pairing', { cookie })).status).toBe(403);
    expect((await raw(network, '/API/Pairing', { cookie })).status).toBe(403);
    expect((await raw(network, '/api/pairing/code', { cookie }, 'POST', {})).status).toBe(403);
    const letGo = await raw(network, `/api/pairing/phones/${phones.at(-1)!.id}`, { cookie }, 'DELETE');
    expect(letGo.status).toBe(403);
  });

  it('is at the bench as long as it takes live events, and the computer is told when that changes', async () => {
    const { cookie } = await paired();
    const here = async () => (await bench.get('getPairing')).phones.at(-1)!.here;
    expect(await here()).toBe(false);
    const told = () =>
      new Promise<void>((resolve) => {
        const stop = bench.started.bench.events.listen((event) => {
          if (event.type !== 'changed' || event.what !== 'pairing') return;
          stop();
          resolve();
        });
      });
    const { hostname, port } = new URL(network);
    const comes = told();
    const req = request({ host: hostname, port, path: '/api/events', headers: { cookie } }, (res) =>
      res.resume(),
    );
    req.on('error', () => undefined);
    req.end();
    await comes;
    expect(await here()).toBe(true);
    const goes = told();
    req.destroy();
    await goes;
    expect(await here()).toBe(false);
  });
  it('is shut out when it is let go, in the middle of an answer too', async () => {
    const { cookie } = await paired();
    const phone = (await bench.get('getPairing')).phones.at(-1)!;
    const ended = new Promise<void>((resolve) => {
      const { hostname, port } = new URL(network);
      const req = request({ host: hostname, port, path: '/api/events', headers: { cookie } }, (res) => {
        res.once('data', () => void bench.get('letGoOfPhone', { params: { phoneId: phone.id } }));
        res.on('error', () => undefined);
        res.once('close', () => resolve());
        res.resume();
      });
      req.on('error', () => resolve());
      req.end();
    });
    await ended;
    expect((await raw(network, '/api/state', { cookie })).status).toBe(403);
    expect((await bench.refusal('letGoOfPhone', { params: { phoneId: phone.id } })).status).toBe(404);
  });

  it('stays paired over a restart and is asked again after thirty days', async () => {
    const { cookie } = await paired();
    await bench.started.close();
    await bench.open({ pair: { host: PHONES, now: () => clock } });
    network = bench.started.phoneAddress;
    expect((await raw(network, '/api/state', { cookie })).status).toBe(200);
    clock += 31 * 86_400_000;
    expect((await raw(network, '/api/state', { cookie })).status).toBe(403);
    expect((await bench.get('getPairing')).phones).toEqual([]);
  });
});
