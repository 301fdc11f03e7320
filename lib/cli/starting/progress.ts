/** A line for each step, with its time. */
import { CalledOff } from './stopping';

const WIDTH = 14;

const seconds = (since: number): string => `${((performance.now() - since) / 1000).toFixed(1).padStart(6)} s`;

export const line = (label: string, milliseconds: number, note = ''): void => {
  const time = `${(milliseconds / 1000).toFixed(1).padStart(6)} s`;
  process.stdout.write(`  ${label.padEnd(WIDTH)}${time}${note === '' ? '' : `  ${note}`}\n`);
};

export interface Noting {
  /** A word behind the time: "unchanged", a port. */
  readonly note: (text: string) => void;
  /** A sentence of its own below the step. */
  readonly tell: (sentence: string) => void;
}

/** The name is there while it works, so that whoever waits sees at what. */
export const step = async <Value>(
  label: string,
  work: (noting: Noting) => Promise<Value> | Value,
): Promise<Value> => {
  const began = performance.now();
  const sentences: string[] = [];
  let word = '';
  process.stdout.write(`  ${label.padEnd(WIDTH)}`);
  try {
    const value = await work({
      note: (text) => {
        word = text;
      },
      tell: (sentence) => sentences.push(sentence),
    });
    process.stdout.write(`${seconds(began)}${word === '' ? '' : `  ${word}`}\n`);
    return value;
  } catch (error) {
    process.stdout.write(
      `${seconds(began)}  ${error instanceof CalledOff ? 'called off' : 'did not get through'}\n`,
    );
    throw error;
  } finally {
    for (const sentence of sentences) process.stdout.write(`    ${sentence}\n`);
  }
};
