/** Opening, listing and closing ports, on this system's own serial library where it can be had. */
import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { connectHead } from '../../src/device/head/connect.ts';
import { listPorts } from '../../src/device/serial/list-ports.ts';
import { HeadLink } from '../../src/device/head/head-link.ts';
import { openFault } from '../../src/device/serial/open-fault.ts';
import { loadSerialLibrary } from '../../src/device/serial/serial-library.ts';
import type { PortHandle, SerialLibrary } from '../../src/device/serial/serial-library.ts';
import { SerialTransport } from '../../src/device/serial/serial-transport.ts';
import { listFromSysfs } from '../../src/device/serial/sysfs-ports.ts';
import { systemClock } from '../../src/device/serial/system-clock.ts';
import { simulatedHead } from './simulated-head/simulated-head.ts';
import { SimulatedClock } from './simulated-clock.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'ports-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('opening', () => {
  it('a port that is not there', async () => {
    const port = new SerialTransport('/dev/ttyACM77');
    await expect(port.open()).rejects.toMatchObject({ kind: 'missing' });
  });
  it('a file that is no port', async () => {
    const file = join(folder, 'notes.txt');
    writeFileSync(file, 'no port');
    await expect(new SerialTransport(file).open()).rejects.toMatchObject({ kind: 'not-a-serial-port' });
  });
  it('a folder', async () => {
    await expect(new SerialTransport(folder).open()).rejects.toMatchObject({ kind: 'not-a-serial-port' });
  });
  it('a port another program holds', async () => {
    const terminal = await simulatedHead();
    const head = await connectHead(new SerialTransport(terminal.path), systemClock);
    await expect(new SerialTransport(terminal.path, { busyMs: 300 }).open()).rejects.toMatchObject({
      kind: 'busy',
    });
    expect((await head.read()).frame).toBe(1); // the first one goes on undisturbed
    await head.close();
    await terminal.stop();
  });
  it.runIf(process.getuid?.() === 0)(
    'a port this user has no right to, as the library itself says it',
    async ({ skip }) => {
      const terminal = await simulatedHead();
      const script = `new (require('serialport').SerialPort)({ path: process.argv[1], baudRate: 115200 }, (error) => {
      console.log(error ? error.message : 'opened'); process.exit(); })`;
      const nobody = { uid: 65_534, gid: 65_534, encoding: 'utf8' } as const;
      const said = spawnSync(
        process.execPath,
        ['-e', script, realpathSync(terminal.path)],
        nobody,
      ).stdout.trim();
      await terminal.stop();
      if (said === '') skip('another user cannot read this checkout');
      expect(openFault(new Error(said), '/dev/ttyACM0').kind, said).toBe('permission');
    },
  );
  it('fifteen times in a row', async () => {
    const terminal = await simulatedHead();
    for (let i = 0; i < 15; i++) {
      const port = new SerialTransport(terminal.path);
      await port.open();
      await port.close();
      expect(port.isOpen).toBe(false);
    }
    await terminal.stop();
  });
  it.each([
    // Linux texts as serialport 13 gives them; the Windows one is from its source.
    ['Error: Permission denied, cannot open /dev/ttyACM0', 'permission'],
    ['Opening COM3: Access denied', 'busy-or-denied'],
    ['Opening COM3: File not found', 'missing'],
    ['Error: No such file or directory, cannot open /dev/ttyACM0', 'missing'],
    ['Error Resource temporarily unavailable Cannot lock port', 'busy'],
    ['Error: Inappropriate ioctl for device setting custom baud rate of 115200', 'not-a-serial-port'],
    ['Error: bad file descriptor, cannot set', 'disconnected'],
    ['EIO: i/o error, write', 'disconnected'],
    ['something nobody has seen', 'open-failed'],
  ])('%s is %s, with the port in its sentence', (text, kind) => {
    const fault = openFault(new Error(text), '/dev/ttyACM0');
    expect(fault.kind).toBe(kind);
    expect(fault.message).toContain('/dev/ttyACM0');
  });
  it('where the native part does not load, the fault says that all else works', async () => {
    const library = (): Promise<SerialLibrary> => Promise.reject(new Error('No native build was found'));
    await expect(new SerialTransport('/dev/ttyACM0', { library }).open()).rejects.toThrow('No native build');
  });
});

/** A port whose driver hangs wherever it can. */
function hangingPort(hangs: { open?: boolean; close?: boolean }): PortHandle & { closes: number } {
  let open = false;
  const port = {
    closes: 0,
    get isOpen() {
      return open;
    },
    open(done: (error: Error | null) => void) {
      if (hangs.open) return;
      open = true;
      done(null);
    },
    write: (_: string, __: 'latin1', done: (error: null) => void) => (done(null), true),
    close(done: (error: Error | null) => void) {
      port.closes++;
      if (hangs.close) return;
      open = false;
      done(null);
    },
    on: () => undefined,
    removeAllListeners: () => undefined,
  };
  return port;
}

function libraryOf(port: PortHandle): () => Promise<SerialLibrary> {
  return async () => ({ make: () => port, list: async () => [] });
}

/** A port that another program holds until a moment of the clock. */
function busyUntil(clock: SimulatedClock, freeAt: number): () => Promise<SerialLibrary> {
  const port = hangingPort({});
  const open = port.open.bind(port);
  port.open = (done) =>
    clock.now() < freeAt ? done(new Error('Error Resource busy, cannot lock port')) : open(done);
  return libraryOf(port);
}

describe('a port that another program holds', () => {
  const opened = (freeAt: number, busyMs?: number) => {
    const clock = new SimulatedClock();
    const library = busyUntil(clock, freeAt);
    const transport = new SerialTransport('/dev/null', {
      clock,
      library,
      ...(busyMs === undefined ? {} : { busyMs }),
    });
    const news: string[] = [];
    transport.onWaiting = (fault) => news.push(`${fault.kind} at ${clock.now()}`);
    return { clock, transport, news };
  };

  it('for a moment, as the lock of the connection before: opens without a word', async () => {
    const { clock, transport, news } = opened(500);
    await clock.run(transport.open());
    expect(transport.isOpen).toBe(true);
    expect(news).toEqual([]);
  });
  it('for 12 s, as a modem manager does: is waited for, told once, and opens by itself', async () => {
    const { clock, transport, news } = opened(12_000);
    await clock.run(transport.open());
    expect(clock.now()).toBeLessThan(13_100);
    expect(news).toEqual(['waiting at 1000']);
  });
  it('for good: given up after 30 s as busy', async () => {
    const { clock, transport } = opened(1e9);
    await expect(clock.run(transport.open())).rejects.toMatchObject({ kind: 'busy' });
    expect(clock.now()).toBe(30_000);
    expect(clock.pendingTimers).toBe(0);
  });
  it('is not waited for where that is not wanted', async () => {
    const { clock, transport } = opened(1e9, 0);
    await expect(clock.run(transport.open())).rejects.toMatchObject({ kind: 'busy' });
    expect(clock.now()).toBe(0);
  });
  it('is told by the link that connects, and waiting ends at once when it is let go', async () => {
    const { clock, transport } = opened(1e9);
    const link = new HeadLink(clock, { find: async () => [] });
    const states: string[] = [];
    link.onState = (state) =>
      states.push(state.state === 'connecting' && state.waiting ? 'waiting' : state.state);
    const connecting = link.connect(transport).catch((error: unknown) => error);
    await clock.pass(5000);
    expect(states).toEqual(['connecting', 'waiting']);
    const before = clock.now();
    await clock.run(link.disconnect());
    expect(await clock.run(connecting)).toMatchObject({ kind: 'disconnected' });
    expect(clock.now()).toBe(before);
    expect(states.at(-1)).toBe('idle');
    expect(clock.pendingTimers).toBe(0);
  });
});

describe('a driver that hangs', () => {
  it('in open: given up after 3 s', async () => {
    const clock = new SimulatedClock();
    const library = libraryOf(hangingPort({ open: true }));
    const opening = new SerialTransport('/dev/null', { clock, library }).open();
    await expect(clock.run(opening)).rejects.toMatchObject({ kind: 'open-timeout' });
    expect(clock.now()).toBe(3000);
  });
  it('in close: let go after 2 s', async () => {
    const clock = new SimulatedClock();
    const port = hangingPort({ close: true });
    const transport = new SerialTransport('/dev/null', { clock, library: libraryOf(port) });
    await clock.run(transport.open());
    await clock.run(transport.close());
    expect(clock.now()).toBe(2000);
    expect(port.closes).toBe(1);
    await transport.close(); // a second close is no error
    expect(port.closes).toBe(1);
    expect(clock.pendingTimers).toBe(0);
  });
  it('in a write: disconnected after 1 s', async () => {
    const clock = new SimulatedClock();
    const port = { ...hangingPort({}), isOpen: true, write: () => true };
    const transport = new SerialTransport('/dev/null', { clock, library: libraryOf(port) });
    await clock.run(transport.open());
    await expect(clock.run(transport.write('*OPC?'))).rejects.toMatchObject({ kind: 'disconnected' });
  });
});

describe('listing', () => {
  const fallback = () => [{ path: '/dev/ttyACM0', vendorId: '1209' }];
  const library = (list: SerialLibrary['list']) => async (): Promise<SerialLibrary> => ({
    make: () => hangingPort({}),
    list,
  });

  it('a list that rejects falls back on /sys', async () => {
    const ports = await listPorts({
      library: library(() => Promise.reject(new Error('ENOENT'))),
      sysfs: fallback,
    });
    expect(ports.map((port) => port.path)).toEqual(['/dev/ttyACM0']);
  });
  it('a list that never answers is given up after its time', async () => {
    const clock = new SimulatedClock();
    const hanging = library(() => new Promise(() => undefined));
    const ports = await clock.run(listPorts({ clock, library: hanging, sysfs: fallback }));
    expect(ports.map((port) => port.path)).toEqual(['/dev/ttyACM0']);
    expect(clock.now()).toBe(2000);
  });
  it('USB ports come first, ids in lower case, numbers in order', async () => {
    const list = library(async () => [
      { path: '/dev/ttyS0' },
      { path: '/dev/ttyACM10', vendorId: '1A86', productId: '7523' },
      { path: '/dev/ttyACM9', vendorId: '2341' },
    ]);
    const ports = await listPorts({ library: list });
    expect(ports.map((port) => port.path)).toEqual(['/dev/ttyACM9', '/dev/ttyACM10', '/dev/ttyS0']);
    expect(ports[1]).toMatchObject({ vendorId: '1a86', usb: true });
  });

  describe.runIf(process.platform === 'linux')('by the real library', () => {
    const path = process.env['PATH'];
    afterEach(() => {
      process.env['PATH'] = path;
    });
    /** Puts a stand-in for udevadm first on the path; without a script there is none at all. */
    function udevadm(script?: string): void {
      if (script !== undefined) {
        writeFileSync(join(folder, 'udevadm'), `#!/bin/sh\n${script}\n`);
        chmodSync(join(folder, 'udevadm'), 0o755);
      }
      process.env['PATH'] = script === undefined ? folder : `${folder}:${path}`;
    }
    it('udevadm missing: the library itself rejects', async () => {
      udevadm();
      const loaded = await loadSerialLibrary();
      await expect(loaded.list()).rejects.toThrow('udevadm');
    });
    it.each([
      ['missing', undefined],
      ['failing', 'exit 1'],
      ['hanging', 'exec sleep 3'],
    ])('udevadm %s: /sys is read', async (_, script) => {
      udevadm(script);
      const ports = await listPorts({ sysfs: fallback, timeoutMs: 500 });
      expect(ports.map((port) => port.path)).toEqual(['/dev/ttyACM0']);
    });
  });
});

describe('/sys', () => {
  it('walks up from the tty to the USB device, and skips a port without one', () => {
    const usb = join(folder, 'devices/usb1/1-1');
    const tty = join(usb, '1-1:1.0/tty/ttyACM0');
    const ports = join(folder, 'class/tty');
    mkdirSync(tty, { recursive: true });
    mkdirSync(ports, { recursive: true });
    for (const [name, text] of Object.entries({
      idVendor: '1209',
      idProduct: '0001',
      serial: 'SN0001',
      manufacturer: 'home made',
    })) {
      writeFileSync(join(usb, name), `${text}\n`);
    }
    symlinkSync('../..', join(tty, 'device'));
    symlinkSync(tty, join(ports, 'ttyACM0'));
    symlinkSync(join(folder, 'nowhere'), join(ports, 'ttyACM1'));
    mkdirSync(join(ports, 'ttyS0'));
    expect(listFromSysfs(ports, '/dev')).toEqual([
      {
        path: '/dev/ttyACM0',
        vendorId: '1209',
        productId: '0001',
        serialNumber: 'SN0001',
        manufacturer: 'home made',
      },
    ]);
  });
  it('a system without /sys has no ports', () => {
    expect(listFromSysfs(join(folder, 'none'))).toEqual([]);
  });
});
