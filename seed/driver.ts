/**
 * A greedy driver: builds a car by asking the rulebook what can be done, and doing it, in the plan's own order.
 * It knows no rule. Whatever it gets accepted, a shop could have done; where it gets stuck, the plan can't be
 * finished from there, or the rules forbid what they should not.
 */
import { assess } from '@/lib/domain/assess';
import type { Assessment, Job } from '@/lib/domain/assess';
import type { Refusal, RefusalCode } from '@/lib/domain/base/refusals';
import type { Instant } from '@/lib/domain/base/vocabulary';
import type { Claim } from '@/lib/domain/commands';
import { planOf } from '@/lib/domain/facts';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import { factsAt, play } from '@/lib/domain/play';
import type { Line, Played, Stage } from '@/lib/domain/play';
import type { World } from '@/lib/domain/world';
import { nextActs } from './acts';
import type { Site } from './acts';

/** The rules it drives by; a test may hand it others. */
export type Play = (world: World, stage: Stage, line: Line) => Played;

export interface DriverOptions {
  readonly playLine?: Play;
  /** The id of the nth command, counted from 1. */
  readonly idOf?: (number: number) => string;
}

/** Done on a device that was out of touch, and heard only now. */
export interface HeardLate {
  readonly doneAt: Instant;
  readonly device: string;
  readonly lastContact: Instant;
}

/** A line, and what it is meant to be refused with where a shop tried what it may not. */
export interface GivenLine extends Line {
  readonly refused?: readonly RefusalCode[];
}

export class Driver {
  world: World;
  readonly lines: GivenLine[] = [];
  private clock: number;
  private readonly stage: Stage;
  private readonly playLine: Play;
  private readonly idOf: (number: number) => string;

  constructor(world: World, stage: Stage, start: string, options: DriverOptions = {}) {
    this.world = world;
    this.stage = stage;
    this.clock = Date.parse(start);
    this.playLine = options.playLine ?? play;
    this.idOf = options.idOf ?? ((number) => `c${String(number)}`);
  }

  get now(): string {
    return new Date(this.clock).toISOString();
  }

  /** Lets time pass. */
  wait(milliseconds: number): void {
    this.clock += milliseconds;
  }

  /** It is this time now. */
  setClock(now: string): void {
    this.clock = Date.parse(now);
  }

  /** Gives one command; an accepted one becomes a line. Answers the refusals, none where it was accepted. */
  give(by: string, claim: Claim, late?: HeardLate): readonly Refusal[] {
    const line = this.lineOf(by, claim, late);
    const { world, verdict } = this.playLine(this.world, this.stage, line);
    if (!verdict.ok) return verdict.error;
    this.world = world;
    this.keep(line);
    return [];
  }

  /** Gives one command that must be refused, for these reasons among others; it becomes a line all the same. */
  tryInVain(by: string, claim: Claim, codes: readonly RefusalCode[]): void {
    const line = this.lineOf(by, claim);
    const { verdict } = this.playLine(this.world, this.stage, line);
    const found = verdict.ok ? [] : [...new Set(verdict.error.map(({ code }) => code))];
    if (!codes.every((code) => found.includes(code)))
      throw new Error(`${claim.type} was meant to be refused with ${codes.join(', ')}: ${found.join(', ')}`);
    this.keep({ ...line, refused: found });
  }

  private lineOf(by: string, claim: Claim, late?: HeardLate): Line {
    const command = { id: this.idOf(this.lines.length + 1), doneAt: late?.doneAt ?? this.now, claim };
    return late === undefined
      ? { now: this.now, by, command }
      : { now: this.now, by, command, device: late.device, lastContact: late.lastContact };
  }

  private keep(line: GivenLine): void {
    this.lines.push(line);
    this.clock += 60_000;
  }

  /** Gives one command that must be accepted. */
  must(by: string, claim: Claim, late?: HeardLate): void {
    const refusals = this.give(by, claim, late);
    if (refusals.length > 0)
      throw new Error(
        `${claim.type} was refused: ${refusals.map((each) => JSON.stringify(each)).join('\n')}`,
      );
  }

  plan(car: string): CompiledPlan {
    const row = this.world.cars[car];
    const plan = row === undefined ? null : planOf({ plans: this.stage.plans }, row);
    if (plan === null) throw new Error(`no car ${car} with a known plan`);
    return plan;
  }

  assess(car: string): Assessment {
    const row = this.world.cars[car];
    if (row === undefined) throw new Error(`no car ${car}`);
    const line: Line = {
      now: this.now,
      by: Object.keys(this.world.shop.people)[0] ?? '',
      command: { id: '', doneAt: this.now, claim: { type: 'deliver-car', car } },
    };
    return assess(this.plan(car), row, factsAt(this.world, this.stage, line));
  }

  site(car: string): Site {
    const row = this.world.cars[car];
    if (row === undefined) throw new Error(`no car ${car}`);
    const { now } = this;
    return { plan: this.plan(car), car: row, shop: this.world.shop, day: this.stage.dayOf(now), now };
  }

  /** Does the next thing that the rules accept. False where nothing is left to try at this hour. */
  step(car: string, ahead = false): boolean {
    const assessment = this.assess(car);
    for (const { by, claim } of nextActs(this.site(car), assessment, ahead))
      if (this.give(by, claim).length === 0) return true;
    return false;
  }

  /** Drives on until the car stands at the gate of `stage` and that gate is open, or nothing more can be done. */
  drive(car: string, stage?: string): { stuck: Assessment | null } {
    const last = this.plan(car).stages.at(-1)?.key ?? '';
    const target = stage ?? last;
    for (;;) {
      const assessment = this.assess(car);
      if (assessment.stage === target && assessment.gate.unmet.length === 0 && isQuiet(assessment, stage))
        return { stuck: null };
      if (!this.step(car) && !this.sleep(car, assessment.jobs) && !this.step(car, true))
        return { stuck: this.assess(car) };
    }
  }

  /** Jumps to the end of the next wait, if something waits only for time. */
  private sleep(car: string, jobs: readonly Job[]): boolean {
    const waits = jobs
      .flatMap((job) => job.waitsFor)
      .flatMap((refusal) => (refusal.code === 'wait-running' ? [refusal.details.until] : []))
      .filter((until) => until !== null)
      .map((until) => Date.parse(until));
    const ends = [...waits, ...this.timedChecks(car)].filter((until) => until > this.clock);
    if (ends.length === 0) return false;
    this.clock = Math.min(...ends);
    return true;
  }

  private timedChecks(car: string): readonly number[] {
    const plan = this.plan(car);
    return Object.entries(this.world.cars[car]?.checks ?? {}).flatMap(([key, row]) =>
      row.status === 'running' && row.begunAt !== null
        ? [Date.parse(row.begunAt) + (plan.checks.get(key)?.holdsMs ?? 0)]
        : [],
    );
  }
}

/** On the way only the gate counts; at the end of all there must be no loose end either. */
const isQuiet = (assessment: Assessment, stage: string | undefined): boolean =>
  stage !== undefined || assessment.looseEnds.length === 0;
