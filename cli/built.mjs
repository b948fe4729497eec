// The command line is TypeScript. Translating some hundred files takes over a second at each command, so they are bundled
// once and kept in `dist/cli`, in a folder named by what the sources were: a bundle of other sources is never run.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';

const ROOT = fileURLToPath(new URL('../', import.meta.url));
const SOURCES = ['cli', 'server', 'src'];
const KEPT = `${ROOT}dist/cli/`;
/** Bundles of earlier sources stay a day: a command that runs from one may still load a part of it. */
const STALE_MS = 24 * 3600 * 1000;

/** Name, size and time of every source below a folder that ends in a slash, in short. @param {string} root */
export function stampOf(root) {
  const hash = createHash('sha256');
  for (const name of ['package.json', 'package-lock.json']) add(name);
  for (const room of SOURCES) {
    for (const file of readdirSync(root + room, { recursive: true, encoding: 'utf8' }).toSorted()) {
      add(`${room}/${file}`);
    }
  }
  return hash.digest('hex').slice(0, 16);

  /** @param {string} file */
  function add(file) {
    const seen = statSync(root + file, { throwIfNoEntry: false });
    if (seen?.isFile()) hash.update(`${file} ${seen.size} ${seen.mtimeMs}\n`);
  }
}

/** A file beside a source (a migration, a worker) is found from where the source stands, not from the bundle. */
const ownPlace = {
  name: 'own-place',
  /** @param {import('esbuild').PluginBuild} build */
  setup(build) {
    build.onLoad({ filter: /\.ts$/ }, ({ path }) => ({
      loader: 'ts',
      contents: readFileSync(path, 'utf8').replaceAll(
        'import.meta.url',
        JSON.stringify(pathToFileURL(path).href),
      ),
    }));
  },
};

/**
 * The bundled program made from the sources as they stand, built where there is none yet.
 * @returns {Promise<string>} the address to import
 * @throws where the folder cannot be written or nothing can be built: the sources are then to be run as they are.
 */
export async function builtProgram() {
  const folder = `${KEPT}${stampOf(ROOT)}/`;
  const program = `${folder}main.js`;
  if (!existsSync(program)) {
    const { build } = await import('esbuild');
    const half = `${KEPT}half-${process.pid}/`;
    mkdirSync(half, { recursive: true });
    await build({
      entryPoints: [`${ROOT}cli/main.ts`],
      outdir: half,
      bundle: true,
      splitting: true,
      format: 'esm',
      platform: 'node',
      target: 'node20',
      packages: 'external',
      plugins: [ownPlace],
      logLevel: 'silent',
    });
    put(half, folder);
    forgetStale();
  }
  return pathToFileURL(program).href;
}

/** Whole or not at all; another command may have been first. @param {string} half @param {string} folder */
function put(half, folder) {
  try {
    renameSync(half, folder);
  } catch (error) {
    rmSync(half, { recursive: true, force: true });
    if (!existsSync(folder)) throw error;
  }
}

function forgetStale() {
  for (const name of readdirSync(KEPT)) {
    const age = Date.now() - (statSync(KEPT + name, { throwIfNoEntry: false })?.mtimeMs ?? Infinity);
    if (age > STALE_MS) rmSync(KEPT + name, { recursive: true, force: true });
  }
}
