/** Random input is the same on every run, so that a failure comes again. `SEED=7 npx vitest run` tries other input. */
import fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env.SEED ?? 1) });
