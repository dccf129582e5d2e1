import process from 'node:process';
import fc from 'fast-check';

/** Random cases are the same in every run, so that a failure comes back. `LAMPWRIGHT_SEED=7 npm test` tries others. */
fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(process.env.LAMPWRIGHT_SEED ?? 1) });
