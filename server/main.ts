import { parseServeOptions, serve } from './serve.ts';

/** `npm start`: the bench on 127.0.0.1. The command line's `serve` does the same. */
process.exitCode = await serve(parseServeOptions(process.argv.slice(2)));
