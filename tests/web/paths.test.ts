import { expect, it } from 'vitest';
import { ROUTES } from '../../server/api/table.ts';
import { PATHS } from '../../web/src/api/paths.ts';

it("the page's paths are the server's, method and path, each one", () => {
  const served = Object.fromEntries(
    Object.entries(ROUTES).map(([name, r]) => [name, `${r.method} ${r.path}`]),
  );
  expect(PATHS).toEqual(served);
});
