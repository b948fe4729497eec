// A worker thread does not inherit the TypeScript loader, so it registers its own first.
import { register } from 'tsx/esm/api';

register();
await import('./mix-worker.ts');
