/** A measured palette in the store, put there over the API: for screens that show what a fit left. */
import { readFileSync } from 'node:fs';

const json = { 'content-type': 'application/json' };

async function api<T>(address: string, method: string, path: string, body?: unknown): Promise<T> {
  const init: RequestInit = { method, headers: json };
  if (body !== undefined) init.body = JSON.stringify(body);
  const answer = await fetch(`${address}/api${path}`, init);
  if (!answer.ok) throw new Error(`${method} ${path}: ${answer.status} ${await answer.text()}`);
  return (await answer.json()) as T;
}

/** Imports a swatch set of tests/fixtures/paint and fits it. @returns the id of a tube that is not the white */
export async function measuredPalette(address: string, fixture = 'transport-spectral.json'): Promise<string> {
  const text = readFileSync(new URL(`../fixtures/paint/${fixture}`, import.meta.url), 'utf8');
  await api(address, 'POST', '/imports', { fileName: fixture, text });
  let fit = await api<{ id: string; state: string; sentence: string }>(address, 'POST', '/fits', {});
  while (fit.state === 'pending' || fit.state === 'running') {
    await new Promise((resolve) => setTimeout(resolve, 300));
    fit = await api(address, 'GET', `/fits/${fit.id}`);
  }
  if (fit.state !== 'complete') throw new Error(`The fit ended as ${fit.state}: ${fit.sentence}`);
  const tubes = await api<{ id: string; role: string | null }[]>(address, 'GET', '/tubes');
  return tubes.find((t) => t.role === null)!.id;
}
