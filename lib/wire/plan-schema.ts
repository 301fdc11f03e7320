/**
 * The shape of a plan file. The document's type is the rulebook's; this says the same to a parser and, by
 * `planJsonSchema`, to an editor. The short texts inside are read later, by `checkPlan`.
 */
import { z } from 'zod';
import { CHECK_KINDS, METHODS, VERIFY_METHODS } from '@/lib/domain/base/vocabulary';
import { PATTERNS } from '@/lib/domain/plan/document';
import type { PlanDocument } from '@/lib/domain/plan/document';
import type { Plain, Same } from './same-shape';

const text = (what: string) => z.string().describe(what);
const named = (what: string) => z.string().regex(/\S/, 'must not be empty').describe(what);
const yesNo = (what: string) => z.boolean().describe(what).optional();
const texts = (what: string) => z.array(z.string()).describe(what).optional();
const whole = (least: number, most: number, what: string) => z.int().min(least).max(most).describe(what);

const when = text('Only on cars with these options: `heater=none and not axle=rebuilt`.').optional();
const due = text('The stage by whose gate it must be met; absent = as its operation.').optional();
const before = text('The operation that may not start before this is met.').optional();
const source = text('Where the value is from: book and page, drawing, maker.').optional();
const repeat = z
  .union([z.enum(['sides', 'corners']), z.number()])
  .describe('How often it stands on the car: `sides`, `corners` or a number.')
  .optional();

const hardwareLine = z.strictObject({
  quantity: z.number().positive().describe('How many in all, for the whole joint or operation.'),
  dueAgain: texts('Operations that are due again when this line is renewed.'),
  per: z
    .enum(['fastener', 'joint'])
    .describe('Shared out over the fasteners, or one lot for the joint as a whole.')
    .optional(),
});
const hardware = z
  .record(z.string(), z.union([z.number().positive(), hardwareLine]))
  .describe('Items and how many of each.')
  .optional();

const option = z.strictObject({
  name: named('What is chosen, in words.'),
  choices: z.array(z.string()).min(1).describe('What may be chosen, each one word.'),
  usual: text('The choice that most cars have.').optional(),
});

const stage = z.strictObject({
  name: named('The name on the board.'),
  purpose: text('What the stage is for.').optional(),
  entry: texts('Needs of a car before it may come in, besides everything due earlier.'),
  capacity: whole(0, 999, 'How many cars have room here at once; absent = no limit.').optional(),
  sharesRoomWith: text('Another stage whose room these cars share.').optional(),
  notBefore: yesNo('Its work may not start before the car stands in it.'),
});

const operation = z.strictObject({
  name: named('What is done, in words.'),
  stage: text('The key of the stage it belongs to.'),
  repeat,
  when,
  minutes: z.number().nonnegative().describe('Planned working time in minutes.').optional(),
  crew: whole(1, 99, 'How many people it takes at once.').optional(),
  who: text('The qualification each person on it must hold; absent = anyone.').optional(),
  equipment: texts('Stands, hoist, jigs and other things it occupies.'),
  cautions: texts('Keys of cautions that are shown before the first step.'),
  steps: texts('The steps in words, in order.'),
  needs: texts('What must be there before it starts: `FR-010`, `J-110 final`, `+weight`, `part P-26`.'),
  body: texts('What finishing it means: `snug J-1`, `check K-1`, `set on-jig`, `fit P-26`.'),
  hardware,
  consumables: z
    .record(z.string(), z.union([z.string(), z.number()]))
    .describe('What is used up, with how much.')
    .optional(),
  pieces: z
    .record(z.string(), z.record(z.string(), z.string()))
    .describe('What is cut, by item: `T60: { side rail: 2 × 3150 mm }`.')
    .optional(),
  wait: text('Time that must pass afterwards before what needs `wait KEY`: `16 h`.').optional(),
  waitFor: text('What the time is for: paint, sealer, fire watch.').optional(),
  outside: text('How long the work is away at another firm: `7 d`.').optional(),
  irreversible: yesNo('It can’t be undone.'),
  covers: texts('Joints that nobody can see once this is done.'),
  madeOn: text('The part that carries what is made here.').optional(),
  redo: yesNo('Due again by itself when a condition it sets is lost.'),
  repeatable: yesNo('May be run again at will.'),
  batch: yesNo('One set-up may serve several cars.'),
  notBefore: yesNo('May not start before the car stands in its stage.'),
  due: text('The stage by whose gate it must be finished; absent = its own stage.').optional(),
});

const joint = z.strictObject({
  name: named('What is fastened, in words.'),
  repeat,
  when,
  fasteners: whole(1, 999, 'How many like fasteners are tightened together.'),
  pattern: z
    .union([z.enum(PATTERNS), z.array(z.number())])
    .describe('The tightening order: a named pattern, or the fasteners’ numbers in order.')
    .optional(),
  passes: whole(1, 20, 'In how many passes it is tightened.').optional(),
  method: z.enum(METHODS).describe('How it is brought to final.'),
  torque: text('`45 ± 3 N·m`, `no value yet` or `no value published`.').optional(),
  source,
  firmMeans: text('What to look for where no value is published.').optional(),
  angle: text('Angle method: the turn after the seat torque, `90 ± 5 °`.').optional(),
  sequence: z
    .record(z.string(), z.string())
    .describe('Sequence method: the steps in order, each with its window or `done`.')
    .optional(),
  slot: yesNo('Tighten to the low end, then on to the next slot, never past the high end.'),
  adapter: yesNo('The place asks for a crow’s-foot or extension.'),
  thread: text('Thread of the fastener: `M10x1.25`, `7/16-20`.').optional(),
  grade: text('Strength grade: `8.8`, in quotes.').optional(),
  length: text('Length of the fastener: `40`, in quotes.').optional(),
  friction: z.number().positive().describe('The factor K that the value was judged with.').optional(),
  hardware,
  critical: yesNo('Brakes, steering, suspension, restraint, fuel: needs a second person.'),
  verify: z.enum(VERIFY_METHODS).describe('What the second person does.').optional(),
  who: text('Qualification of who brings it to final; absent = as its operation.').optional(),
  verifier: text('Qualification of who verifies; absent = the joint’s own.').optional(),
  finalNeeds: texts('What must be there before it is brought to final.'),
  disturbs: texts('Joints that opening this one puts in doubt.'),
  clears: texts('Conditions that opening this one ends.'),
  loadedBy: texts('Conditions whose first setting after final puts it in doubt.'),
  useOnce: yesNo('Tightened once: the only remedy is to renew.'),
  due,
  before,
  dueLevel: z
    .enum(['snug', 'final', 'verified'])
    .describe('How far it must be by then; absent = verified if critical or a method is named, else final.')
    .optional(),
});

const check = z.strictObject({
  name: named('What is looked at, in words.'),
  repeat,
  when,
  kind: z.enum(CHECK_KINDS).describe('Seen, measured, or tried in use.'),
  values: z.record(z.string(), z.string()).describe('Named values, each with its limit.').optional(),
  holds: text('Functional: how long it must hold, `10 min`.').optional(),
  with: texts('Gauges and tools it is made with.'),
  who: text('The qualification of who makes it.').optional(),
  about: text('The part or joint that a failure is about.').optional(),
  critical: yesNo('The car’s safety hangs on it.'),
  neverConcede: yesNo('A failure may never be accepted as it is.'),
  pair: yesNo('Replace both sides where one fails.'),
  due,
  before,
  failure: text('What to do when it fails.').optional(),
  source,
});

const stopgap = z.strictObject({
  name: named('The temporary fixing, in words.'),
  quantity: whole(1, 999, 'How many are placed.'),
  when,
  where: text('Where it sits.').optional(),
  standsFor: text('What must replace it.').optional(),
  slaveIn: texts('Joints it stands in: they can’t pass snug while it is there.'),
  outBy: text('The stage by whose gate it must be out.'),
  adHoc: yesNo('Placed by a tap where it is wanted, by no operation.'),
});

const part = z.strictObject({
  name: named('The part, in words.'),
  origin: z.enum(['donor', 'bought', 'made']).describe('Where it comes from.').optional(),
  grade: z
    .enum(['reuse', 'refurbish', 'replace', 'scrap'])
    .describe('What a donor part is usually graded.')
    .optional(),
  lookedAt: text('What is looked at when it is graded.').optional(),
  lookOver: yesNo('Graded reuse it counts as here only after a look that says what was looked at.'),
  outside: text('How long it is away at another firm: `7 d`.').optional(),
  critical: yesNo('The car’s safety hangs on it.'),
  when,
});

const substitute = z.strictObject({
  condition: text('When it may stand in, in words.').optional(),
  onlyIn: texts('Only in these joints; absent = in all but `notIn`.'),
  notIn: texts('Not in these joints.'),
  asksLead: yesNo('A lead must have signed for it first.'),
});

const cut = z
  .strictObject({
    lengths: z.array(z.string()).min(1).describe('The lengths it is sold in: `6 m`, `20 ft` as `240 in`.'),
    kerf: text('What each cut takes away: `3 mm`.'),
    ends: text('What is cut away at each end first; absent = nothing.').optional(),
    keep: text('The shortest rest that goes back into the rack; absent = none does.').optional(),
  })
  .describe('How it is cut, for what comes in lengths.')
  .optional();

const item = z.strictObject({
  name: named('The item as it is bought.'),
  unit: text('What it is counted in; absent = pieces.').optional(),
  reuse: text('`once fitted`, `once final`, `3 times` or `always`; absent = always.').optional(),
  trace: z.enum(['lot', 'bulk']).describe('Traced by lot, or taken from a bin.').optional(),
  note: text('Anything else about it.').optional(),
  cut,
  substitutes: z.record(z.string(), substitute).describe('Items that may stand in for it.').optional(),
});

const caution = z.strictObject({
  hazard: named('What can hurt.'),
  text: named('What to do about it.'),
  source,
});

const document = z.strictObject({
  plan: named('The model that is built.'),
  revision: named('Which revision of its plan this is.'),
  note: text('What this revision is about.').optional(),
  options: z.record(z.string(), option).describe('Choices the plan offers.').optional(),
  conditions: z
    .record(z.string(), z.string())
    .describe('Physical facts about a car that work needs or forbids, each in words.')
    .optional(),
  stages: z.record(z.string(), stage).describe('The spans of the build, in order.'),
  operations: z.record(z.string(), operation).describe('The work.').optional(),
  joints: z.record(z.string(), joint).describe('Sets of like fasteners tightened together.').optional(),
  checks: z.record(z.string(), check).describe('Inspections.').optional(),
  stopgaps: z.record(z.string(), stopgap).describe('Temporary fixings.').optional(),
  parts: z.record(z.string(), part).describe('Parts that are fitted.').optional(),
  items: z.record(z.string(), item).describe('Hardware that is bought and used.').optional(),
  cautions: z.record(z.string(), caution).describe('Warnings shown before work that can hurt.').optional(),
}) satisfies z.ZodType<PlanDocument>;

/** `never`, and so an error below, once schema and document differ by so much as one optional field. */
type IfSame<T> = Same<Plain<z.input<typeof document>>, Plain<PlanDocument>> extends true ? T : never;

export const planSchema: IfSame<typeof document> = document;

/** The schema for editors that complete and check YAML as it is typed (draft 2020-12). */
export const planJsonSchema = (): unknown => ({
  $id: 'urn:slipmark:plan',
  title: 'Slipmark build plan',
  ...z.toJSONSchema(planSchema, { io: 'input', unrepresentable: 'any' }),
});
