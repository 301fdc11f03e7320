/** Ending well: what was begun ends in the reverse order, once, however often one is asked. */
import { pause } from './processes';

/** Thrown where a step finds that the start was called off. */
export class CalledOff extends Error {
  override readonly name = 'CalledOff';
}

type Task = () => Promise<void> | void;

const tasks: Task[] = [];
const helpers = new Set<() => void>();
let ending: Promise<void> | undefined;

/** What runs until it is stopped: the database, the server. */
export const onStop = (task: Task): void => {
  tasks.push(task);
};

/** What a step waits for: it is ended at once. Answers how to take it back, for when it ended by itself. */
export const onCallOff = (end: () => void): (() => void) => {
  helpers.add(end);
  return () => helpers.delete(end);
};

export const isStopping = (): boolean => ending !== undefined;

export const goOnUnlessStopping = (): void => {
  if (isStopping()) throw new CalledOff();
};

const end = async (starting: Promise<unknown>): Promise<void> => {
  for (const helper of helpers) helper();
  // The step that is half way sees that it was called off, so that nothing is begun behind our back; one that can't
  // see it loses its database.
  await Promise.race([starting, pause(3000)]);
  for (let task = tasks.pop(); task !== undefined; task = tasks.pop()) {
    try {
      await task();
    } catch (error) {
      // What follows is still to be ended.
      process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
    }
  }
};

export const stopAll = (starting: Promise<unknown>): Promise<void> => (ending ??= end(starting));

/** A terminal sends its Ctrl-C to all of us, and the bootstrap forwards it again: only the first counts. */
export const stopOnSignals = (stop: (signal: NodeJS.Signals) => void): void => {
  let isHeard = false;
  const heard = (signal: NodeJS.Signals): void => {
    if (!isHeard) stop(signal);
    isHeard = true;
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, heard);
  // The bootstrap is gone, killed perhaps: nobody would forward a signal any more.
  process.on('disconnect', () => {
    heard('SIGHUP');
  });
};
