/**
 * The shape of every claim, for whatever comes from outside: a line of `replay`, a form, a tablet.
 * Only shape: whether a key names something and whether it may be done is the rulebook's.
 */
import { z } from 'zod';
import { DISPOSITIONS, HOLD_SCOPES, ROLES } from '@/lib/domain/base/vocabulary';
import { SUSPECT_REASONS, TOOL_KINDS, VERIFY_METHODS } from '@/lib/domain/base/vocabulary';
import type { Instant } from '@/lib/domain/base/vocabulary';
import type { Claim } from '@/lib/domain/commands';
import {
  count,
  day,
  fasteners,
  figure,
  idSchema,
  ids,
  instantSchema,
  texts,
  unit,
  words,
} from './claim-words';
import { componentClaims, tripClaims } from './component-schema';
import { donorHardwareClaims } from './donor-schema';
import { kitClaims } from './kit-schema';
import { photosSchema } from './photo-schema';
import { purchaseClaims } from './purchase-schema';
import { cutClaims } from './cut-schema';
import { stockClaims } from './stock-schema';
import type { Plain, Same } from './same-shape';
import { supplyClaims } from './supply-schema';

const photos = photosSchema.optional();
const qualification = z.strictObject({ key: idSchema, from: day.optional(), until: day.optional() });
const length = z.strictObject({ value: figure, unit });
const calibrated = z.strictObject({ on: day, due: day, certificate: figure.optional() });
const fitted = z.strictObject({
  item: idSchema,
  insteadOf: idSchema.optional(),
  fasteners: fasteners.optional(),
  lot: idSchema.optional(),
  reused: z.boolean().optional(),
});
const hardware = z.array(fitted).max(999).optional();

const is = <Type extends Claim['type']>(type: Type) => ({ type: z.literal(type) });
const onCar = <Type extends Claim['type']>(type: Type) => ({ ...is(type), car: idSchema });
const onOperation = <Type extends Claim['type']>(type: Type) => ({
  ...onCar(type),
  operation: idSchema,
  run: count.optional(),
});
const onJoint = <Type extends Claim['type']>(type: Type) => ({
  ...onCar(type),
  joint: idSchema,
  cycle: count.optional(),
});
const onCheck = <Type extends Claim['type']>(type: Type) => ({
  ...onCar(type),
  check: idSchema,
  round: count.optional(),
});

const shopClaims = (instant: ReturnType<typeof instantSchema>) =>
  [
    z.strictObject({
      ...is('add-person'),
      person: idSchema,
      name: words,
      roles: z.array(z.enum(ROLES)),
      qualifications: z.array(qualification).optional(),
    }),
    z.strictObject({ ...is('qualify-person'), person: idSchema, qualification }),
    z.strictObject({ ...is('end-qualification'), person: idSchema, key: idSchema, last: day }),
    z.strictObject({
      ...is('rename-person'),
      person: idSchema,
      name: words.max(100, 'this is longer than 100 characters'),
    }),
    z.strictObject({ ...is('change-roles'), person: idSchema, roles: z.array(z.enum(ROLES)).min(1) }),
    z.strictObject({ ...is('remove-person'), person: idSchema }),
    z.strictObject({
      ...is('add-tool'),
      tool: idSchema,
      name: words,
      kind: z.enum(TOOL_KINDS),
      low: figure,
      high: figure,
      unit,
      length: length.optional(),
      calibrated: calibrated.optional(),
      cycleLimit: count.optional(),
    }),
    z.strictObject({
      ...is('add-adapter'),
      adapter: idSchema,
      name: words,
      extension: figure,
      unit,
      angle: z.number().min(0).max(180).optional(),
    }),
    z.strictObject({
      ...is('record-calibration'),
      tool: idSchema,
      on: day,
      due: day,
      certificate: figure.optional(),
      asFound: z.array(z.strictObject({ set: figure, delivered: figure })).optional(),
      uncertainty: figure.optional(),
      tolerance: figure.optional(),
    }),
    z.strictObject({
      ...is('suspect-tool'),
      tool: idSchema,
      reason: z.enum(SUSPECT_REASONS),
      from: instant.optional(),
    }),
    z.strictObject({
      ...is('receive-lot'),
      lot: idSchema,
      item: idSchema,
      quantity: z.number().positive(),
      certificate: figure.optional(),
      certificateAsked: z.boolean().optional(),
      expires: day.optional(),
    }),
    z.strictObject({ ...is('release-plan'), plan: idSchema }),
    z.strictObject({ ...is('quarantine-lot'), lot: idSchema, reason: words }),
    z.strictObject({ ...is('clear-lot'), lot: idSchema, reason: words }),
    ...donorHardwareClaims,
    ...stockClaims,
    ...cutClaims,
    ...purchaseClaims,
    ...tripClaims,
  ] as const;

const jointClaims = [
  z.strictObject({ ...onJoint('snug-joint'), hardware, photos }),
  z.strictObject({
    ...onJoint('final-joint'),
    hardware,
    tool: idSchema.optional(),
    adapter: idSchema.optional(),
    unit: unit.optional(),
    setting: figure.optional(),
    passes: z.array(fasteners).max(20).optional(),
    readings: z.array(figure).max(999).optional(),
    drags: z.array(figure).max(999).optional(),
    angles: z.array(figure).max(999).optional(),
    steps: texts.optional(),
    unitConfirmed: z.boolean().optional(),
    photos,
  }),
  z.strictObject({
    ...onJoint('verify-joint'),
    method: z.enum(VERIFY_METHODS),
    tool: idSchema.optional(),
    photos,
  }),
  z.strictObject({ ...onJoint('reject-joint'), reason: words, photos }),
  z.strictObject({ ...onJoint('recheck-joint'), tool: idSchema.optional(), photos }),
  z.strictObject({
    ...onJoint('open-joint'),
    fasteners: fasteners.optional(),
    reason: words.optional(),
  }),
  z.strictObject({
    ...onJoint('report-disturbed'),
    cause: z.enum(['stripe-broken', 'moved']),
    fasteners: fasteners.optional(),
    photos,
  }),
  z.strictObject({
    ...onJoint('report-over-torque'),
    fastener: count,
    reading: figure,
    unit,
    tool: idSchema.optional(),
    adapter: idSchema.optional(),
  }),
] as const;

const usedLots = z
  .array(z.strictObject({ item: idSchema, lot: idSchema, quantity: figure.optional() }))
  .max(100);

const workClaims = [
  z.strictObject(onOperation('start-operation')),
  z.strictObject(onOperation('join-operation')),
  z.strictObject({ ...onOperation('pause-operation'), leftAs: words.optional(), photos }),
  z.strictObject({ ...onOperation('leave-operation'), leftAs: words.optional() }),
  z.strictObject(onOperation('resume-operation')),
  z.strictObject(onOperation('take-over-operation')),
  z.strictObject({ ...onOperation('finish-operation'), lots: usedLots.optional(), photos }),
  z.strictObject(onCheck('begin-check')),
  z.strictObject({
    ...onCheck('pass-check'),
    values: texts.optional(),
    tool: idSchema.optional(),
    photos,
  }),
  z.strictObject({ ...onCheck('fail-check'), values: texts.optional(), reason: words, photos }),
] as const;

const thingClaims = [
  z.strictObject({
    ...onCar('place-stopgap'),
    stopgap: idSchema.optional(),
    what: words.optional(),
    quantity: count.optional(),
    where: words.optional(),
    slaveIn: z.array(idSchema).optional(),
    outBy: idSchema.optional(),
  }),
  z.strictObject({ ...onCar('remove-stopgap'), stopgap: idSchema, quantity: count.optional() }),
  z.strictObject({ ...onCar('set-condition'), condition: idSchema, reason: words }),
  z.strictObject({ ...onCar('clear-condition'), condition: idSchema, reason: words }),
  z.strictObject({ ...onCar('fit-part'), part: idSchema }),
  z.strictObject({
    ...onCar('take-part'),
    part: idSchema,
    reason: words,
    takenFor: idSchema.optional(),
  }),
] as const;

const matterClaims = [
  z.strictObject({
    ...onCar('report-finding'),
    about: z.strictObject({ kind: z.enum(['part', 'joint', 'check', 'place']), key: idSchema }),
    text: words,
    photos,
  }),
  z.strictObject({
    ...onCar('decide-finding'),
    finding: idSchema,
    disposition: z.enum(DISPOSITIONS),
    reason: words,
  }),
  z.strictObject({ ...onCar('close-finding'), finding: idSchema, text: words.optional() }),
  z.strictObject({ ...onCar('ask-change'), wait: idSchema, reason: words }),
  z.strictObject({
    ...onCar('decide-change'),
    change: idSchema,
    approve: z.boolean(),
    reason: words.optional(),
  }),
  z.strictObject({
    ...onCar('place-hold'),
    scope: z.enum(HOLD_SCOPES),
    things: z.array(idSchema).optional(),
    reason: words,
  }),
  z.strictObject({ ...onCar('release-hold'), hold: idSchema, reason: words.optional() }),
  z.strictObject({ ...onCar('strike-signature'), signature: idSchema, reason: words }),
] as const;

const carClaims = [
  z.strictObject({
    ...onCar('start-car'),
    plan: idSchema,
    chassis: words,
    colour: words.optional(),
    options: z.record(idSchema, figure).optional(),
  }),
  z.strictObject({ ...onCar('choose-option'), option: idSchema, choice: figure }),
  z.strictObject({ ...onCar('assign'), job: idSchema, add: ids, remove: ids }),
  z.strictObject({ ...onCar('add-note'), of: idSchema, text: words, photos }),
  z.strictObject({ ...onCar('add-photo'), of: idSchema, slot: idSchema, hash: figure }),
  z.strictObject({ ...onCar('advance-car'), to: idSchema }),
  z.strictObject({ ...onCar('send-back'), to: idSchema, reason: words }),
  z.strictObject(onCar('deliver-car')),
] as const;

const allClaims = (read: (text: string) => Instant | null) =>
  z.discriminatedUnion('type', [
    ...shopClaims(instantSchema(read)),
    ...jointClaims,
    ...workClaims,
    ...thingClaims,
    ...matterClaims,
    ...carClaims,
    ...kitClaims,
    ...componentClaims,
    ...supplyClaims,
  ]) satisfies z.ZodType<Claim>;

type Read = z.output<ReturnType<typeof allClaims>>;
/** The types of claim whose schema differs from the rulebook's by so much as one optional field; none, or an error below. */
type Differing = {
  [Type in Claim['type']]: Same<
    Plain<Extract<Read, { type: Type }>>,
    Plain<Extract<Claim, { type: Type }>>
  > extends true
    ? never
    : Type;
}[Claim['type']];

/** Every claim, told apart by its `type`. `read` turns a time as typed into an instant, by the shop's zone. */
export const claimSchema: [Differing] extends [never] ? typeof allClaims : Differing = allClaims;
