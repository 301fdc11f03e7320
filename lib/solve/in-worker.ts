/** Solving beside a server: in a thread of its own, so that no page waits for it. */
import { Worker } from 'node:worker_threads';
import type { CuttingProblem } from '@/lib/domain/shop/cutting';
import type { OrderProblem } from '@/lib/domain/shop/order';
import type { CuttingAnswer } from './cutting/solve';
import type { PinCost } from './order/pin-costs';
import type { OrderSolution } from './order/solve';

export type SolveTask =
  | { readonly kind: 'cutting'; readonly problem: CuttingProblem; readonly seconds: number }
  | { readonly kind: 'order'; readonly problem: OrderProblem; readonly seconds: number }
  | {
      readonly kind: 'pins';
      readonly problem: OrderProblem;
      readonly withPins: OrderSolution;
      readonly seconds: number;
    }
  /** One after the other; `seconds` is for all of them. */
  | {
      readonly kind: 'cutting-lists';
      readonly problems: readonly CuttingProblem[];
      readonly seconds: number;
    };

interface Answers {
  readonly cutting: CuttingAnswer;
  readonly order: OrderSolution;
  readonly pins: readonly PinCost[];
  readonly 'cutting-lists': readonly CuttingAnswer[];
}

/**
 * Rejects with what the solver threw, and with an AbortError where `signal` ends it first; the thread is gone either way.
 *
 * @example await solveInWorker({ kind: 'order', problem, seconds: 10 })
 */
export const solveInWorker = <Task extends SolveTask>(
  task: Task,
  signal?: AbortSignal,
): Promise<Answers[Task['kind']]> =>
  new Promise((resolve, reject) => {
    const worker = startWorker(task);
    const stop = (): void => {
      void worker.terminate();
      reject(new DOMException('The solver was stopped.', 'AbortError'));
    };
    signal?.addEventListener('abort', stop, { once: true });
    worker.once('message', (answer: Answers[Task['kind']]) => resolve(answer));
    worker.once('error', reject);
    worker.once('exit', () => {
      signal?.removeEventListener('abort', stop);
      reject(new Error('The solver ended without an answer.'));
    });
    if (signal?.aborted === true) stop();
  });

/** Next bundles the file named in this expression, so it must stand here as it is. */
const startWorker = (task: SolveTask): Worker =>
  isBundled()
    ? new Worker(new URL('./worker.ts', import.meta.url), { workerData: task })
    : new Worker(
        // tsx is not inherited by a thread, and neither is the condition.
        `import { register } from 'tsx/esm/api'; register(); await import(${JSON.stringify(new URL('./worker.ts', import.meta.url).href)})`,
        {
          eval: true,
          execArgv: ['--input-type=module', '--conditions=react-server'],
          workerData: task,
        },
      );

/** Next says so of its own server; its bundles keep the address of the source, so that one tells nothing. */
const isBundled = (): boolean => process.env.NEXT_RUNTIME !== undefined;
