"""Plays one side of a wire transcript on a real pseudo-terminal: (sent, answered) pairs in order.

    python3 transcript.py LINK '[["*IDN?", "TINTLADDER,..."], ["*CLS", null]]'

A line that is not the next pair's ends the play. On "end" (stdin) it prints {"unused": [...], "unexpected": [...]}.
"""
import json
import os
import pty
import select
import sys
import termios
import tty

link, pairs = sys.argv[1], json.loads(sys.argv[2])
unexpected, buffer = [], b''
master, keep = pty.openpty()
tty.setraw(keep, termios.TCSANOW)
os.symlink(os.ttyname(keep), link)
print('ready', flush=True)
while True:
    for ready in select.select([0, master], [], [])[0]:
        if ready == 0:
            sys.stdin.readline()
            os.unlink(link)
            print(json.dumps({'unused': [sent for sent, _ in pairs], 'unexpected': unexpected}), flush=True)
            sys.exit(0)
        *lines, buffer = (buffer + os.read(master, 4096)).split(b'\n')
        for line in (each.decode('latin1') for each in lines):
            if pairs and not unexpected and pairs[0][0] == line:
                answer = pairs.pop(0)[1]
                if answer is not None:
                    os.write(master, answer.encode('latin1') + b'\n')
            else:
                unexpected.append(line)
