/** Every worked example runs as its first line says, against the package as it is built. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../', import.meta.url));
const run = (...args: string[]) => spawnSync(process.execPath, args, { cwd: root, encoding: 'utf8' });
const example = (name: string) => run('--import', 'tsx', `examples/${name}.ts`);

describe('worked examples', () => {
  beforeAll(() => {
    const built = run('node_modules/typescript/bin/tsc', '-p', 'tsconfig.library.json');
    expect(built.stdout).toBe('');
  }, 120_000);

  it('predict a mix', () => {
    const { stdout, stderr, status } = example('predict-a-mix');
    expect({ stderr, status }).toEqual({ stderr: '', status: 0 });
    expect(stdout).toMatch(
      /^L\* \d+\.\d\d, a\* .* under D65\/10deg\nvalue \d\.\d\d, cool; good to \d\.\d\d CIEDE2000/,
    );
  });

  it('match a colour', () => {
    const { stdout, status } = example('match-a-colour');
    expect(status).toBe(0);
    const pours = [...stdout.split('\n')[1]!.matchAll(/(\d+\.\d\d) g/g)].map((m) => Number(m[1]));
    expect(Math.abs(pours.reduce((a, b) => a + b, 0) - 20)).toBeLessThan(0.02);
  });

  it('convert a file, and say what was assumed', () => {
    const { stdout, stderr, status } = example('convert-a-file');
    expect(status).toBe(0);
    expect(stderr).toMatch(/Assumed: .*decimal commas/);
    expect(stderr).toMatch(/Assumed: .*per cent/);
    expect(stdout).toContain('<cc:CxF');
  });

  it('compare two profiles', () => {
    const { stdout, status } = example('compare-two-profiles');
    expect(status).toBe(0);
    expect(stdout).toMatch(/older\/blue to newer\/blue: .*weaker: 8\d %/);
    expect(stdout).toMatch(/older\/earth to newer\/earth: No difference/);
  });

  it('replace a tube', () => {
    const { stdout, stderr, status } = example('replace-a-tube');
    expect({ stderr, status }).toEqual({ stderr: '', status: 0 });
    expect(stdout).toMatch(/stronger: 12\d %/);
    expect(stdout).toMatch(/1\.[56]\d g of invented blue[^(]* \(was 2\.00 g of invented blue\)/);
    expect(stdout).toContain('tube replaced: blue-2 for blue');
  });
});
