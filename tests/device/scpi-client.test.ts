/** The conversation itself over a pseudo-terminal: error queue, grammar, order. */
import { describe, expect } from 'vitest';
import { systemClock } from '../../src/device/serial/system-clock.ts';
import { connectHead } from '../../src/device/head/connect.ts';
import { ScpiClient } from '../../src/device/scpi/client.ts';
import { command, drainErrors } from '../../src/device/scpi/error-queue.ts';
import { it } from './simulated-head/bench.ts';
import type { Bench } from './simulated-head/bench.ts';

async function talking(bench: Bench): Promise<ScpiClient> {
  const port = await bench.started();
  const client = new ScpiClient(port, systemClock);
  await port.open();
  return client;
}

const plain = (send: string) => ({ send, read: (answer: string) => answer });

describe.concurrent('the error queue', () => {
  it('an unknown command gives no answer, and its error is found', async ({ bench }) => {
    const client = await talking(bench);
    await expect(command(client, 'NO:SUCH 1')).rejects.toMatchObject({
      kind: 'unsupported',
      details: { code: -113 },
    });
    await client.close();
  });
  it('a value of the wrong type', async ({ bench }) => {
    const client = await talking(bench);
    await expect(command(client, 'INP:GAIN x')).rejects.toMatchObject({
      kind: 'refused',
      details: { code: -104 },
    });
    await client.close();
  });
  it('is emptied after a refusal: the next command is not blamed for it', async ({ bench }) => {
    const client = await talking(bench);
    await expect(command(client, 'INP:GAIN 3;:INP:GAIN x')).rejects.toMatchObject({
      details: { code: -222 },
    });
    await command(client, 'INP:GAIN 4');
    expect(await client.ask(plain('INP:GAIN?'))).toBe('4');
    await client.close();
  });
  it('FETC? before any frame: not a number, and -230', async ({ bench }) => {
    const client = await talking(bench);
    expect(await client.ask(plain('FETC?'))).toBe('9.91E37');
    expect(await drainErrors(client)).toEqual([
      { code: -230, text: 'Data corrupt or stale', detail: undefined },
    ]);
    await client.close();
  });
  it('a message longer than the head takes: -363', async ({ bench }) => {
    const client = await talking(bench);
    await client.line.send(`INP:GAIN ${' '.repeat(300)}4`);
    expect((await drainErrors(client)).map((entry) => entry.code)).toEqual([-363]);
    await client.close();
  });
  it('overflows into -350', async ({ bench }) => {
    const client = await talking(bench);
    for (let i = 0; i < 20; i++) await client.line.send('NO:SUCH');
    const codes = (await drainErrors(client)).map((entry) => entry.code);
    expect(codes).toHaveLength(16);
    expect(codes.at(-1)).toBe(-350);
    await client.close();
  });
});

describe.concurrent('questions', () => {
  it('asked at once are put one after another, each with its own answer', async ({ bench }) => {
    const client = await talking(bench);
    const answers = await Promise.all([
      client.ask(plain('*OPC?')),
      client.ask(plain('SYST:VERS?')),
      client.ask(plain('*IDN?;*OPC?')),
      client.ask(plain('system:error:count?')),
    ]);
    expect(answers).toEqual(['1', '1999.0', 'TINTLADDER,HEAD-8,SN0001,0.1.0;1', '0']);
    await client.close();
  });
  it('answers to the probe that come late and together do not shift what follows', async ({ bench }) => {
    const port = await bench.started();
    await bench.terminal.command('fault-any late 700');
    const head = await connectHead(port, systemClock);
    expect(head.health.noiseLines).toBeGreaterThanOrEqual(1);
    expect((await head.read()).frame).toBe(1);
    await head.close();
  });
  it('on a closed port fail at once and are never sent later', async ({ bench }) => {
    const client = await talking(bench);
    await client.close();
    await expect(client.ask(plain('*OPC?'))).rejects.toMatchObject({ kind: 'disconnected' });
    expect(JSON.parse(await bench.terminal.command('sent'))).toEqual([]);
  });
});
