/**
 * The one write path. Whoever wants to change anything about cars or the shop's books comes through here: the HTTP
 * door, the command line, the seed. Outside it are only secrets, sessions and throttles (lib/server/auth), and plan
 * documents, which do nothing until a command releases them.
 */
import 'server-only';
import type { Command } from '@/lib/domain/commands';
import { decide } from '@/lib/domain/decide';
import { evolveAll } from '@/lib/domain/evolve';
import { isCutClaim } from '@/lib/domain/cut-claims';
import { isDonorHardwareClaim } from '@/lib/domain/donor-claims';
import { isPurchaseClaim } from '@/lib/domain/purchase-claims';
import { isSupplyClaim } from '@/lib/domain/supply-claims';
import { touches } from '@/lib/domain/touches';
import type { World } from '@/lib/domain/world';
import type { Database, Transaction } from './database';
import type { Given, RunAnswer } from './given';
import { keepCar, keptFor } from './load/kept';
import type { Head, Kept } from './load/kept';
import { loadPlan, loadReleased } from './load/plan';
import { withTools } from './load/shop';
import { withRetries } from './retry';
import { storedAnswer, writeAccepted, writeRefused } from './write/answer';
import { bodyHash, carOf, claim, streamFor, toolOf } from './write/claim';
import { writeForeseen } from './write/foreseen';
import { foreseenSlice, readSlice } from './write/slice';

const LIMITS = { maxWait: 5000, timeout: 12_000 };

/**
 * Judges one command and, if it holds, writes all that follows from it, in one transaction. The answer is final for
 * the command's id and the same however often it is asked. Throws only where the database can't be reached or a rule
 * broke a constraint; then nothing was done.
 */
export const runCommand = async (db: Database, zone: string, given: Given): Promise<RunAnswer> => {
  const kept = keptFor(db);
  const plan = await planFor(db, kept, given);
  if (plan !== null) await loadPlan(db, plan);
  const { claim } = given.command;
  if (isSupplyClaim(claim) || isPurchaseClaim(claim) || isDonorHardwareClaim(claim) || isCutClaim(claim))
    await loadReleased(db);
  const asked = { kept, zone, given, plan, hash: bodyHash(given) };
  return withRetries(async () => (await foreseen(db, asked)) ?? attempt(db, asked));
};

/** One command with what it is judged by, whichever way it goes. */
interface Asked {
  readonly kept: Kept;
  readonly zone: string;
  readonly given: Given;
  /** Null where no plan is concerned. */
  readonly plan: string | null;
  /** Of the body. */
  readonly hash: string;
}

/** In one statement, if it can be judged on what is kept; null = not done, and to be judged under its locks. */
const foreseen = async (db: Database, asked: Asked): Promise<RunAnswer | null> => {
  const { kept, zone, given, plan, hash } = asked;
  const { command } = given;
  const slice = foreseenSlice(kept, zone, given, plan);
  if (slice === null) return null;
  const { facts, world, car, head } = slice;
  const verdict = decide(facts, world, command);
  // A refusal is judged once more, under the locks: what this process keeps may be what is in the way.
  if (!verdict.ok || verdict.value.length === 0) return null;
  const after = evolveAll(world, verdict.value);
  const { version, hash: last } = head;
  const locked = { version, head: last, isNew: false, shopVersion: world.shop.version, tool: null };
  const effect = { stream: streamFor(command), car, locked, events: verdict.value, before: world, after };
  const now = await writeForeseen(db, given, hash, effect);
  if (now === null) return null;
  keepAfter(kept, command, after, now);
  return { outcome: 'accepted', already: false, car, version: now.version };
};

/** What this process may remember, once the database has it for good. */
const keepAfter = (kept: Kept, command: Command, after: World, head: Head): void => {
  const car = after.cars[carOf(command) ?? ''];
  if (streamFor(command) === 'shop') {
    if (head.version > (kept.shop?.version ?? 0)) kept.shop = after.shop;
    return;
  }
  if (car !== undefined) keepCar(kept, car, head);
  const tool = after.shop.tools[toolOf(command)];
  // A calibration begins the count anew, as a new version of the shop.
  if (tool !== undefined && kept.shop?.version === after.shop.version)
    kept.shop = withTools(kept.shop, [tool]);
};

/** A car stays on its plan, so that its hash may be read before the lock. */
const planFor = async (db: Database, kept: Kept, { command }: Given): Promise<string | null> => {
  if ('plan' in command.claim) return command.claim.plan;
  const car = carOf(command);
  if (car === null) return null;
  return (
    kept.planOf.get(car) ??
    (await db.car.findUnique({ where: { id: car }, select: { plan: true } }))?.plan ??
    null
  );
};

const attempt = async (db: Database, asked: Asked): Promise<RunAnswer> => {
  const { answer, commit } = await db.$transaction((tx) => judged(tx, asked), LIMITS);
  commit();
  return answer;
};

interface Judged {
  readonly answer: RunAnswer;
  /** What this process may remember, once the database has it for good. */
  readonly commit: () => void;
}

const nothing = (): void => undefined;

const judged = async (tx: Transaction, { kept, zone, given, plan, hash }: Asked): Promise<Judged> => {
  const { command } = given;
  const document = plan === null ? undefined : kept.plans.get(plan);
  const touched = plan === null || document === undefined ? null : { hash: plan, stages: document.stages };
  // The first is the stream, which has a row.
  const [, ...others] = touches(command, touched, given.actor);
  const locked = await claim(tx, given, hash, others);
  if (locked === null) return { answer: await storedAnswer(tx, command.id, hash), commit: nothing };
  const { facts, world } = await readSlice(tx, kept, zone, given, locked, plan);
  const verdict = decide(facts, world, command);
  if (!verdict.ok) {
    await writeRefused(tx, command, verdict.error);
    return { answer: { outcome: 'refused', already: false, refusals: verdict.error }, commit: nothing };
  }
  const after = evolveAll(world, verdict.value);
  const car = carOf(command);
  const stream = streamFor(command);
  const effect = { stream, car, locked, events: verdict.value, before: world, after };
  const head = await writeAccepted(tx, command.id, effect);
  return {
    answer: { outcome: 'accepted', already: false, car, version: head.version },
    commit: () => {
      keepAfter(kept, command, after, head);
    },
  };
};
