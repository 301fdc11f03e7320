/** Plays lines of `{ now, by, command }` through the rules, one after another: `replay`, the seed and the tests use it. */
import type { Refusal } from './base/refusals';
import type { Result } from './base/result';
import type { Day, Instant, PersonId } from './base/vocabulary';
import type { Command } from './commands';
import { decide } from './decide';
import type { Event } from './events';
import { evolveAll } from './evolve';
import { factsOf } from './facts';
import type { Facts } from './facts';
import type { PlanDocument } from './plan/document';
import type { World } from './world';

export interface Line {
  readonly now: Instant;
  readonly by: PersonId;
  readonly command: Command;
  readonly device?: string;
  /** When the device was last in touch; absent = believed. */
  readonly lastContact?: Instant;
}

/** What does not change while lines are played. */
export interface Stage {
  readonly plans: Readonly<Record<string, PlanDocument>>;
  /** The shop's calendar: which day an instant falls on. */
  readonly dayOf: (at: Instant) => Day;
}

export interface Played {
  readonly world: World;
  readonly verdict: Result<readonly Event[], readonly Refusal[]>;
}

export const factsAt = (world: World, stage: Stage, line: Line): Facts =>
  factsOf(
    world.shop,
    world.cars,
    stage.plans,
    {
      now: line.now,
      doneAt: line.command.doneAt,
      lastContact: line.lastContact ?? null,
      isInOrder: true,
      actor: line.by,
      device: line.device ?? null,
    },
    stage.dayOf,
  );

/** One line: its verdict, and the world after it. A refusal changes nothing. */
export const play = (world: World, stage: Stage, line: Line): Played => {
  const verdict = decide(factsAt(world, stage, line), world, line.command);
  return { world: verdict.ok ? evolveAll(world, verdict.value) : world, verdict };
};
