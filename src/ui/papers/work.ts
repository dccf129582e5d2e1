import { Stopped } from './stopped.ts';

const SLICE_MS = 24;

const nextTurn = (): Promise<void> =>
  new Promise((done) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      done();
    };
    port2.postMessage(undefined);
  });

/**
 * Runs steps a little at a time so that the screen stays alive, and gives what they come to. `tell` hears of each step;
 * when the signal is aborted the work ends with `Stopped`.
 */
export const runSteps = async <S, R>(
  steps: Generator<S, R, undefined>,
  tell: (step: S) => void,
  signal: AbortSignal,
): Promise<R> => {
  let since = performance.now();
  for (;;) {
    if (signal.aborted) throw new Stopped();
    const step = steps.next();
    if (step.done) return step.value;
    tell(step.value);
    if (performance.now() - since > SLICE_MS) {
      await nextTurn();
      since = performance.now();
    }
  }
};
