/** The command line: names the commands and their arguments, and hands over. */
import { fileURLToPath } from 'node:url';
import { Command, CommanderError, InvalidArgumentError } from 'commander';
import { USUAL_WEEK } from '@/lib/domain/shop/need-days';
import { planJsonSchema } from '@/lib/wire/plan-schema';
import { asJson, unusable } from './answer';
import type { Answer } from './answer';
import { checkPlanFile } from './check-plan';
import { inkFor } from './ink';
import { need } from './need';
import type { NeedOptions } from './need';
import type { NewShopOptions } from './open-new-shop';
import { isZone } from '@/lib/wire/shop-day';
import { replay } from './replay';
import type { ReplayOptions } from './replay';
import type { SolveOptions } from './solve-cutting';
import type { VerifyOptions } from './verify-log';

const print = ({ exit, out, problems = [] }: Answer): void => {
  // Set, not called: process.exit would cut off what a pipe has not taken yet.
  process.exitCode = exit;
  if (problems.length > 0) process.stderr.write(`${problems.join('\n')}\n`);
  if (out.length > 0) process.stdout.write(`${out.join('\n')}\n`);
};

const root = fileURLToPath(new URL('../../', import.meta.url));
const ink = inkFor(process.stdout, process.env.NO_COLOR);

const program = new Command('slipmark')
  .description('What has been done to a car, what stands in its way, and who has signed for it.')
  .exitOverride();

const plan = program.command('plan').description('look at a build plan');
plan
  .command('schema')
  .description('print the JSON Schema of a plan file, for editors')
  .action(() => print({ exit: 0, out: asJson(planJsonSchema()) }));
plan
  .command('check')
  .description('tell every problem of a plan file; ends with 1 if there are errors')
  .argument('<file>', 'the plan, as YAML or JSON')
  .option('--json', 'one JSON document instead of lines')
  .action((file: string, options: { json?: boolean }) => print(checkPlanFile(file, options, ink)));

program
  .command('replay')
  .description('play a day’s lines on a plan and tell what the shop would have answered')
  .argument('<plan>', 'the plan, as YAML or JSON')
  .argument('<lines>', 'one JSON object to a line: {"now": …, "by": …, "command": {"type": …}, "expect"?: …}')
  .option('--json', 'one JSON document instead of lines')
  .option('--car <id>', 'only the lines of this car, and how it stands')
  .option('--quiet', 'only refusals, and how the cars stand at the end')
  .option('--zone <zone>', 'time zone of the shop, for times that name none', 'UTC')
  .addHelpText(
    'after',
    '\nEnds with 0 if every line turned out as expected (accepted, unless its “expect” says "no" or names the codes),\n' +
      '1 if one did not or the plan has errors, 2 if something can’t be read.\n' +
      'To see one: slipmark replay seed/example-plan.yaml seed/example-day.jsonl',
  )
  .action((planFile: string, linesFile: string, options: ReplayOptions) =>
    print(replay(planFile, linesFile, options, ink)),
  );

program
  .command('need')
  .description('what the cars of a day’s lines still need, for which work, and what of it must be bought')
  .argument('<plan>', 'the plan, as YAML or JSON')
  .argument('<lines>', 'as for replay')
  .option('--json', 'one JSON document instead of lines')
  .option('--short', 'only what must be bought')
  .option(
    '--minutes <minutes>',
    'minutes of work on one car in a day, for the days',
    String(USUAL_WEEK.minutesADay),
  )
  .option('--zone <zone>', 'time zone of the shop, for times that name none', 'UTC')
  .action((planFile: string, linesFile: string, options: NeedOptions) =>
    print(need(planFile, linesFile, options, ink)),
  );

const seconds = (text: string): number => {
  const value = Number(text);
  if (!(value > 0 && value <= 86_400)) throw new InvalidArgumentError('Give seconds, like 20 or 0.5.');
  return value;
};

const solve = program
  .command('solve')
  .description('find the best answer to a problem in a file, and prove it');
solve
  .command('cutting')
  .description('the fewest stock lengths for a cut list, then the least length taken')
  .argument('<file>', 'one list or many, as JSON or YAML')
  .option('--json', 'one JSON document: of each list its name, lengths, bound, proved, seconds')
  .option('--seconds <n>', 'for each list', seconds, 20)
  .action(async (file: string, options: SolveOptions) => {
    const { solveCuttingFile } = await import('./solve-cutting');
    print(await solveCuttingFile(file, options));
  });

solve
  .command('order')
  .description('the order with the fewest late car-days, then the least money')
  .argument('<file>', 'lines, suppliers, offers and pins, as JSON or YAML')
  .option('--json', 'one JSON document')
  .option('--seconds <n>', 'for the order, and again for each pin', seconds, 20)
  .action(async (file: string, options: SolveOptions) => {
    const { solveOrderFile } = await import('./solve-order');
    print(await solveOrderFile(file, options));
  });

/** The database's client is made from the schema, and the packages that talk to it are heavy: both only when asked for. */
const withShop = async (run: () => Promise<Answer>): Promise<void> => {
  const { prepareClient } = await import('./starting/prepare');
  const { ShopClosed } = await import('./shop-address');
  const { StartTrouble } = await import('./starting/trouble');
  await prepareClient(root);
  try {
    print(await run());
  } catch (error) {
    if (!(error instanceof ShopClosed || error instanceof StartTrouble)) throw error;
    print({ exit: 2, out: [], problems: [error.message] });
  }
};

program
  .command('log')
  .description('look at what the shop has recorded')
  .command('verify')
  .description('hash and fold every stream again and compare the rows; ends with 1 if something does not fit')
  .option('--car <id>', 'only this car')
  .option('--own', 'the shop of one’s own, where both it and the demo are there', false)
  .option('--hold-as <person>', 'as this person, hold every car that has a fault at its gate')
  .option('--json', 'one JSON document instead of lines')
  .action((options: VerifyOptions & { own: boolean }) =>
    withShop(async () => {
      const { shopAddress } = await import('./shop-address');
      const { verifyShopLog } = await import('./verify-log');
      return verifyShopLog(await shopAddress(root, options.own), options);
    }),
  );

program
  .command('shop')
  .description('shops')
  .command('new')
  .description('an empty shop with one owner, in the running cluster or at DATABASE_URL')
  .requiredOption('--name <name>', 'what it is called')
  .requiredOption('--owner <name>', 'who owns it')
  .option('--zone <zone>', 'its time zone', Intl.DateTimeFormat().resolvedOptions().timeZone)
  .option('--address <url>', 'where its pages are served', 'http://127.0.0.1:3000')
  .action((options: NewShopOptions) =>
    withShop(async () => {
      if (!isZone(options.zone))
        return unusable(`${options.zone} is no time zone: give a name like Europe/London.`);
      const { openNewShop } = await import('./open-new-shop');
      return openNewShop(root, options);
    }),
  );

// Whoever reads only the first lines (`| head`) closes the pipe; that is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

try {
  await program.parseAsync();
} catch (error) {
  if (!(error instanceof CommanderError)) throw error;
  process.exitCode = error.exitCode === 0 ? 0 : 2;
}
