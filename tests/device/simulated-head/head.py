"""A simulated head on a real pseudo-terminal, for tests: protocol 1.1 of hardware-notes/protocol.md, Python standard
library only. Written from that document, not from the driver; its checksum is binascii.crc_hqx.

    python3 head.py LINK [--serial SN0001] [--kind BAND|SPEC|XYZ] [--eol lf|crlf|cr] [--no-crc] [--protocol 1.1]
                    [--boot-ms 0] [--garbage] [--deaf] [--babble TEXT]

LINK is made a symbolic link to the terminal. Commands on stdin, one a line, each answered by "ok" on stdout:
    unplug | replug [LINK] | restart | press | raw HEX | fault NAME [ARG] | fault-always NAME [ARG] | fault-any NAME
    [ARG] | set ATTRIBUTE JSON | sent | quit
"fault" touches the next answer to READ?, READ:DARK? or FETC?, "fault-always" each of them until "fault" without a
name, "fault-any" the next answer whatever it is. "sent" answers with the program messages received since the last one.
"""
import argparse
import binascii
import json
import os
import pty
import random
import select
import sys
import termios
import time
import tty

GAINS = [0.5, 1, 2, 4, 8, 16, 32, 64, 128, 256, 512]
BANDS = [('F1', 415, 26), ('F2', 445, 30), ('F3', 480, 36), ('F4', 515, 39), ('F5', 555, 39), ('F6', 590, 40),
         ('F7', 630, 50), ('F8', 680, 52), ('CLR', None, None), ('NIR', 910, 60)]
COUNTS = [11654, 17481, 23308, 29134, 34961, 40788, 34961, 23308, 58269, 11654]


class Refused(Exception):
    pass


def nr3(value):
    return ('%.4E' % value).replace('E+0', 'E').replace('E-0', 'E-').replace('E+', 'E')


def long_forms(words):
    """'SYSTem:ERRor?' -> the spellings the grammar allows, upper case."""
    spellings = ['']
    for i, node in enumerate(words.rstrip('?').split(':')):
        short = ''.join(c for c in node if not c.islower())
        spellings = [s + (':' if i else '') + form for s in spellings for form in {short, node.upper()}]
    return [s + ('?' if words.endswith('?') else '') for s in spellings]


class Head:
    def __init__(self, options):
        self.options = options
        self.channels = {'BAND': BANDS, 'SPEC': [(str(nm), nm, 10) for nm in range(380, 740, 10)],
                         'XYZ': [('X', None, None), ('Y', None, None), ('Z', None, None)]}[options.kind]
        self.table = {}
        for name in [n for n in dir(self) if n.startswith('on_')]:
            for spelling in long_forms(getattr(self, name).__doc__):
                self.table[spelling] = getattr(self, name)
        self.power_on()

    def power_on(self):
        self.crc, self.errors, self.frame, self.esr, self.presses = False, [], 0, 128, 0
        self.reset()

    def reset(self):
        self.gain, self.aperture, self.averages, self.lamp = 64, 0.00500, 1, 0
        self.external, self.waiting, self.last = False, False, None
        self.saturate, self.analogue, self.broken, self.light_changed = None, False, False, False

    def error(self, text):
        if len(self.errors) < 16:
            self.errors.append(text)
        else:
            self.errors[-1] = '-350,"Queue overflow"'

    def execute(self, message):
        answers = []
        for unit in message.split(';'):
            unit = unit.strip().lstrip(':')
            if not unit:
                continue
            header, _, rest = unit.partition(' ')
            run = self.table.get(header.upper())
            try:
                if not run:
                    raise Refused('-113,"Undefined header"')
                answer = run(*[p.strip() for p in rest.split(',')] if rest.strip() else [])
            except Refused as refusal:
                self.error(str(refusal))
                continue
            except TypeError:
                self.error('-109,"Missing parameter"')
                continue
            if answer is not None:
                answers.append(answer)
        if not answers:
            return None
        line = ';'.join(answers)
        return line + ',#H%04X' % binascii.crc_hqx(line.encode('latin1'), 0xFFFF) if self.crc else line

    def number(self, text, low, high):
        try:
            value = float(text)
        except ValueError:
            raise Refused('-104,"Data type error"')
        if not low <= value <= high:
            raise Refused('-222,"Data out of range"')
        return value

    def take(self, lamp):
        self.waiting = False
        if self.broken:
            self.error('-240,"Hardware error"')
            return '9.91E37'
        time.sleep(2 * self.aperture * self.averages)
        self.frame = self.frame % 65535 + 1
        flags = (0 if lamp else 4) | (16 if self.light_changed else 0)
        counts = [str(COUNTS[i % 10] if lamp else 9 + i % 3) for i in range(len(self.channels))]
        if self.saturate is not None:
            flags |= 1
            counts[self.saturate] = '9.9E37'
            self.error('510,"Channel saturated;%s"' % self.channels[self.saturate][0])
        if self.analogue:
            flags |= 2
            self.error('510,"Channel saturated;F5"')
        self.last = ','.join(map(str, [self.frame, flags, '%g' % self.gain, nr3(self.aperture), int(lamp), '2.981E2',
                                       len(counts)] + counts))
        return self.last

    def on_idn(self): "*IDN?"; return 'TINTLADDER,HEAD-8,%s,0.1.0' % self.options.serial
    def on_rst(self): "*RST"; self.reset()
    def on_cls(self): "*CLS"; self.errors.clear()
    def on_tst(self): "*TST?"; return '1' if self.broken else '0'
    def on_opc(self): "*OPC?"; return '1'
    def on_esr(self): "*ESR?"; esr, self.esr = self.esr, 0; return str(esr)
    def on_err(self): "SYSTem:ERRor?"; return self.errors.pop(0) if self.errors else '0,"No error"'
    def on_err_count(self): "SYSTem:ERRor:COUNt?"; return str(len(self.errors))
    def on_version(self): "SYSTem:VERSion?"; return '1999.0'
    def on_protocol(self): "SYSTem:PROTocol:VERSion?"; return self.options.protocol

    def on_crc_set(self, on):
        "SYSTem:COMMunicate:CRC"
        if self.options.no_crc:
            raise Refused('-113,"Undefined header"')
        self.crc = on == '1'

    def on_crc(self):
        "SYSTem:COMMunicate:CRC?"
        if self.options.no_crc:
            raise Refused('-113,"Undefined header"')
        return str(int(self.crc))

    def on_function(self): "SENSe:FUNCtion?"; return '"%s"' % self.options.kind
    def on_geometry(self): "SENSe:GEOMetry?"; return '"45/0"'
    def on_count(self): "SENSe:CHANnel:COUNt?"; return str(len(self.channels))

    def on_catalogue(self, first='1', count='512'):
        "SENSe:CHANnel:CATalog?"
        listed = self.channels[int(first) - 1:][:int(count)]
        metres = lambda nm: '9.91E37' if nm is None else nr3(nm * 1e-9)
        return ','.join('"%s",%s,%s' % (name, metres(nm), metres(width)) for name, nm, width in listed)

    def on_gain_set(self, x):
        "INPut:GAIN"
        gain = self.number(x, 0, 1e6)
        if gain not in GAINS:
            raise Refused('-222,"Data out of range"')
        self.gain = gain

    def on_gain(self): "INPut:GAIN?"; return '%g' % self.gain
    def on_gains(self): "INPut:GAIN:CATalog?"; return ','.join('%g' % g for g in GAINS)

    def on_aperture_set(self, s):
        "SENSe:APERture"
        self.aperture = round(self.number(s, 0.005, 0.8) / 2.78e-4) * 2.78e-4

    def on_aperture(self, end=None):
        "SENSe:APERture?"
        return nr3({'MIN': 0.005, 'MAX': 0.8}.get(end, self.aperture))

    def on_averages_set(self, n): "SENSe:AVERage:COUNt"; self.averages = int(self.number(n, 1, 64))
    def on_averages(self): "SENSe:AVERage:COUNt?"; return str(self.averages)
    def on_range(self): "SENSe:RANGe?"; return '65500'
    def on_passes(self): "SENSe:PASSes?"; return '2'
    def on_lamp_set(self, on): "OUTPut"; self.lamp = int(on)
    def on_lamp(self): "OUTPut?"; return str(self.lamp)
    def on_source_set(self, source): "TRIGger:SOURce"; self.external = source.upper().startswith('EXT')
    def on_source(self): "TRIGger:SOURce?"; return 'EXT' if self.external else 'IMM'

    def on_presses(self):
        "TRIGger:COUNt?"
        if self.options.protocol == '1.0':
            raise Refused('-113,"Undefined header"')
        return str(self.presses)

    def press(self):
        self.presses = (self.presses + 1) % 65536
        if self.waiting:
            self.take(True)

    def on_init(self):
        "INITiate"
        if self.waiting:
            raise Refused('-213,"Init ignored"')
        self.last = None
        if self.external:
            self.waiting = True
        else:
            self.take(True)

    def on_abort(self): "ABORt"; self.waiting = False

    def on_fetch(self):
        "FETCh?"
        if self.last is None:
            self.error('-230,"Data corrupt or stale"')
            return '9.91E37'
        return self.last

    def on_number(self): "SENSe:FRAMe?"; return str(self.frame)
    def on_read(self): "READ?"; return self.take(True)
    def on_dark(self): "READ:DARK?"; return self.take(False)
    def on_measure(self): "MEASure:COUNts?"; return self.take(True)
    def on_temperature(self): "MEASure:TEMPerature?"; return '2.981E2'

    def on_xyz(self):
        "MEASure:XYZ?"
        if self.options.kind != 'XYZ':
            raise Refused('-113,"Undefined header"')
        return '41.2,43.1,20.1,10,"D65"'

    def on_operation(self): "STATus:OPERation:CONDition?"; return str(32 if self.waiting else 0)
    def on_questionable(self): "STATus:QUEStionable:CONDition?"; return '0'


class Wire:
    """The terminal, the cable and what goes wrong with both."""

    def __init__(self, head, options):
        self.head, self.options, self.link = head, options, options.link
        self.master, self.buffer, self.fault, self.any_fault, self.sent, self.always = None, b'', None, None, [], False
        self.deaf_until, self.opened, self.plugs = 0, False, 0
        self.eol = {'lf': b'\n', 'crlf': b'\r\n', 'cr': b'\r'}[options.eol]

    def plug(self):
        self.master, self.keep = pty.openpty()          # a slave kept open: no EIO between clients
        tty.setraw(self.keep, termios.TCSANOW)
        self.buffer, self.opened = b'', False
        if os.path.lexists(self.link):
            os.unlink(self.link)
        os.symlink(os.ttyname(self.keep), self.link)

    def unplug(self):
        if self.master is None:
            return
        os.unlink(self.link)
        os.close(self.keep)
        os.close(self.master)                            # both ends closed: the cable is pulled
        self.master = None

    def write(self, data):
        while data and self.master is not None:
            data = data[os.write(self.master, data):]

    def boot(self):
        """The first byte a client sends stands for the DTR reset of an open port."""
        self.opened = True
        if self.options.garbage:
            self.write(b'\x00\xff\xc3(\xf8\x80ets Jul 29 2019 rst:0x1\r\n')
        self.deaf_until = time.monotonic() + self.options.boot_ms / 1000

    def receive(self):
        try:
            data = os.read(self.master, 4096)
        except OSError:
            return
        if not self.opened:
            self.boot()
        if time.monotonic() < self.deaf_until or self.options.deaf:
            return
        *lines, self.buffer = (self.buffer + data).replace(b'\r', b'\n').split(b'\n')
        for line in lines:
            text = line.decode('latin1')
            if text.strip():
                self.sent.append(text)
            if len(line) > 255:
                self.head.error('-363,"Input buffer overrun"')
            elif self.options.babble:
                self.write(self.options.babble.encode('latin1') + self.eol)
            elif self.master is not None:
                self.answer(text)

    def answer(self, text):
        answer = self.head.execute(text)
        if answer is None:
            return
        frame = any(word in text.upper() for word in ('READ', 'FETC'))
        fault, self.any_fault = self.any_fault, None
        if fault is None and frame:
            fault, self.fault = self.fault, self.fault if self.always else None
        data = answer.encode('latin1') + self.eol
        if fault is None:
            self.write(data)
        else:
            getattr(self, 'fault_' + fault[0])(data, *fault[1:])

    def fault_cut(self, data): self.write(data[:len(data) // 2])
    def fault_cut_at(self, data, n): self.write(data[:int(n)])
    def fault_double(self, data): self.write(data + data)
    def fault_silent(self, data): pass
    def fault_flood(self, data): self.write(b'A' * 16384)
    def fault_late(self, data, ms): time.sleep(int(ms) / 1000); self.write(data)

    def fault_slow(self, data, ms='5'):
        for byte in data:
            self.write(bytes([byte]))
            time.sleep(int(ms) / 1000)

    def fault_flip(self, data, bit):
        bit, data = int(bit), bytearray(data)
        data[bit // 8 % (len(data) - 1)] ^= 1 << bit % 8
        self.write(bytes(data))

    def fault_digit(self, data):
        """Another digit in the last count: looks like a reading in every way but the checksum."""
        at = data.rindex(b',#H' if self.head.crc else self.eol) - 1
        self.write(data[:at] + (b'5' if data[at:at + 1] != b'5' else b'6') + data[at + 1:])

    def fault_noise(self, data, seed='1'):
        dice = random.Random(int(seed))
        self.write(bytes(dice.randrange(256) for _ in range(24)) + data)

    def fault_unplug_at(self, data, n):
        self.write(data[:int(n)])
        time.sleep(0.02)                                 # let the bytes through before the hang-up
        self.unplug()

    def fault_hang_up_in_flood(self, data):
        """Data in flight at the hang-up: what serialport can miss."""
        for _ in range(40):
            self.write(b'B' * 128)
        self.unplug()

    def fault_repeat_old(self, data):
        """The frame before this one in its place."""
        self.write(self.old if hasattr(self, 'old') else data)

    def fault_remember(self, data): self.old = data; self.write(data)

    def command(self, line):
        words = line.split()
        name = words[0] if words else 'quit'
        if name == 'unplug': self.unplug()
        elif name == 'replug':
            self.link = words[1] if len(words) > 1 else self.link
            self.head.power_on()
            self.plug()
        elif name == 'restart': self.head.power_on()
        elif name == 'press': self.head.press()
        elif name == 'raw': self.write(bytes.fromhex(words[1]))
        elif name in ('fault', 'fault-always'): self.fault, self.always = words[1:] or None, name == 'fault-always'
        elif name == 'fault-any': self.any_fault = words[1:]
        elif name == 'set': setattr(self.head, words[1], json.loads(words[2]))
        elif name == 'sent': print(json.dumps(self.sent), flush=True); self.sent = []; return
        elif name == 'quit': self.unplug(); sys.exit(0)
        print('ok', flush=True)

    def run(self):
        self.plug()
        print('ready', flush=True)
        while True:
            watched = [0] + ([self.master] if self.master is not None else [])
            for ready in select.select(watched, [], [])[0]:
                if ready == 0:
                    line = sys.stdin.readline()
                    self.command(line if line else 'quit')
                    break                                # the terminal may have gone meanwhile
                self.receive()


if __name__ == '__main__':
    parser = argparse.ArgumentParser()
    parser.add_argument('link')
    parser.add_argument('--serial', default='SN0001')
    parser.add_argument('--kind', default='BAND')
    parser.add_argument('--eol', default='lf')
    parser.add_argument('--protocol', default='1.1')
    parser.add_argument('--boot-ms', type=int, default=0)
    parser.add_argument('--babble', default='')
    for flag in ('--no-crc', '--garbage', '--deaf'):
        parser.add_argument(flag, action='store_true')
    options = parser.parse_args()
    Wire(Head(options), options).run()
