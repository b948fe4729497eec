import { describe, expect, it } from 'vitest';
import { DeviceFault, FAULT_KINDS } from '../../src/device/fault.ts';

const FULL = {
  port: '/dev/ttyACM0',
  seen: 'what came',
  allowed: 'what may come',
  channels: ['F1', 'F7'],
  asked: 'READ?',
  code: -222,
};

describe.each(FAULT_KINDS)('the sentence of the fault "%s"', (kind) => {
  it.each([
    ['with no details', {}],
    ['with all of them', FULL],
  ])('is one sentence that says what was seen, what is allowed and what to do, %s', (_, details) => {
    const { message } = new DeviceFault(kind, details);
    expect(message).toMatch(/^[A-Z/]/);
    expect(message.endsWith('.')).toBe(true);
    expect(message.slice(0, -1)).not.toMatch(/[.!?] [A-Z]/);
    expect(message.split(';').length, message).toBeGreaterThanOrEqual(3);
    expect(message).not.toMatch(/undefined|null|\[object|NaN/);
    expect(message.length).toBeLessThan(330);
  });
});
