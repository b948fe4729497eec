import { describe, expect, it } from 'vitest';
import { makeProgram } from '../../cli/main.ts';
import { cli, spawned } from './run-cli.ts';

const program = makeProgram({ out: () => undefined, err: () => undefined });

describe('help', () => {
  it('lists every verb, says what exit codes mean, and cautions', async () => {
    const { out, code } = await cli('--help');
    expect(code).toBe(0);
    for (const verb of program.commands) expect(out).toContain(verb.name());
    expect(out).toContain('Exit codes: 0 done, 1 it could not be done, 2 asked for in the wrong way.');
    expect(out).toContain('safety data sheet');
  });

  it.each(program.commands.map((verb) => verb.name()))(
    'of %s describes it, its arguments and each of its options',
    async (name) => {
      const verb = program.commands.find((v) => v.name() === name)!;
      const { out, code } = await cli(name, '--help');
      expect(code).toBe(0);
      expect(verb.description()).not.toBe('');
      expect(out.replace(/\s+/g, ' ')).toContain(verb.description());
      for (const argument of verb.registeredArguments)
        expect(argument.description, argument.name()).not.toBe('');
      for (const option of verb.options) {
        expect(option.description, option.flags).not.toBe('');
        expect(out).toContain(option.long);
      }
    },
  );

  it('of nothing at all is the help, with exit code 2', async () => {
    const { code, out } = await cli();
    expect(code).toBe(2);
    expect(out).toContain('Usage: tintladder');
  });

  it('points at itself for an unknown verb or option', async () => {
    const verb = spawned('frobnicate');
    expect(verb.code).toBe(2);
    expect(verb.err).toContain('"tintladder --help"');
    const option = await cli('predict', '--colour');
    expect(option.code).toBe(2);
    expect(option.err).toContain('"tintladder predict --help"');
  });

  it('prints its version', async () => {
    expect(spawned('--version').out.trim()).toMatch(/^\d+\.\d+\.\d+$/);
  });
});
