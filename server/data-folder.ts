import { mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import envPaths from 'env-paths';
import { StoreProblem } from './store/open-store.ts';
import { say } from './api/sentences/bench.ts';

/** Where the store lives unless `--data` says otherwise: the data folder of this user on this system. */
export function defaultDataFolder(): string {
  return envPaths('tintladder', { suffix: '' }).data;
}

/**
 * The store's file in a data folder, made if it is not there.
 * @throws StoreProblem when the folder cannot be made.
 */
export function storeFile(folder: string | undefined): string {
  const at = resolve(folder ?? defaultDataFolder());
  try {
    mkdirSync(at, { recursive: true });
  } catch (error) {
    throw new StoreProblem(say('data-folder', { folder: at, cause: (error as Error).message }));
  }
  return join(at, 'tintladder.sqlite');
}
