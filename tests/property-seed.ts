/**
 * Properties are tried on the same cases in every run, so that a run on a clean checkout says the same twice;
 * TINTLADDER_SEED=<number> tries others.
 */
import fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env['TINTLADDER_SEED'] ?? 20261125) });
