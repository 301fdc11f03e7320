/** The one copy of HiGHS in a process: its WebAssembly is compiled at the first question and then kept. */
import loadHighs from 'highs';
import type { Highs } from 'highs';

let loading: Promise<Highs> | null = null;

/** Says nothing on its own: what HiGHS would print belongs to nobody's screen. */
export const highs = (): Promise<Highs> => (loading ??= loadHighs({ print: quiet, printErr: quiet }));

const quiet = (): void => undefined;
