/** `npm start`, from the packages on: makes what is missing, opens the database, serves, and ends all of it well. */
import { constants } from 'node:os';
import { openAnyShop } from './any-shop';
import { freePortFrom, whyNot } from './free-port';
import { handedOver } from './handed-over';
import type { HandedOver } from './handed-over';
import { line, step } from './progress';
import { prepareClient, preparePages } from './prepare';
import { keepServing } from './keep-serving';
import { CalledOff, goOnUnlessStopping, isStopping, stopAll, stopOnSignals } from './stopping';
import { foreignAddress } from './foreign-database';
import { asTrouble, StartTrouble } from './trouble';

const checkPort = async (port: number): Promise<void> => {
  const reason = await whyNot(port);
  if (reason === null) return;
  if (reason === 'EACCES')
    throw new StartTrouble(
      `Port ${String(port)} is for root only. Take one from 1024 on: npm start -- --port 3000`,
    );
  const other = await freePortFrom(port + 1);
  throw new StartTrouble(
    `Port ${String(port)} is taken by another program.\nStop that one, or take another port: npm start -- --port ${String(other)}`,
  );
};

/** Answers what keeps it open from then on. */
const start = async (given: HandedOver): Promise<() => Promise<void>> => {
  const foreign = foreignAddress(process.env);
  await checkPort(given.port);
  const pages = process.env.SLIPMARK_DIST ?? '.next';
  line('packages', given.installing, given.installing < 500 ? 'unchanged' : '');
  await step('client', async ({ note }) => {
    note(await prepareClient(given.root));
  });
  await step('pages', async ({ note }) => {
    note(await preparePages(given.root, pages));
  });
  goOnUnlessStopping();
  const shop = await openAnyShop(given, foreign);
  goOnUnlessStopping();
  const { address, watch } = await keepServing(given, pages, shop);
  goOnUnlessStopping();
  const whole = ((given.installing + performance.now()) / 1000).toFixed(1);
  process.stdout.write(`\nSlipmark is open after ${whole} s:  ${address}\n\n`);
  for (const text of await shop.greeting(address)) process.stdout.write(`  ${text}\n`);
  process.stdout.write('\nCtrl-C closes it; everything is kept.\n');
  return watch;
};

const given = handedOver();
// A closed terminal takes no more words; that must not keep us from ending well.
for (const stream of [process.stdout, process.stderr]) stream.on('error', () => undefined);

let isOpen = false;
const run = async (): Promise<void> => {
  try {
    const watch = await start(given);
    isOpen = true;
    await watch();
  } catch (error) {
    if (error instanceof CalledOff || isStopping()) return;
    const says =
      asTrouble(error)?.message ?? (error instanceof Error ? (error.stack ?? error.message) : String(error));
    process.stderr.write(`\n${says}\n`);
    process.exitCode = 1;
  }
};

const running = run();
stopOnSignals((signal) => {
  const wasOpen = isOpen;
  process.stdout.write('\nStopping …\n');
  void stopAll(running).then(() => {
    process.stdout.write('Stopped. Everything is kept.\n');
    process.exit(wasOpen ? 0 : 128 + constants.signals[signal]);
  });
});

await running;
if (!isStopping()) {
  await stopAll(running);
  process.exit();
}
