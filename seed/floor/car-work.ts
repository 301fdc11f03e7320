/**
 * One car's way through the shop, told in working hours. It knows no rule: what it claims, the rulebook judges, and
 * what may be done next it asks of the same assessment that the screens show.
 */
import type { Assessment, Job } from '@/lib/domain/assess';
import type { Refusal, RefusalCode } from '@/lib/domain/base/refusals';
import type { CarId, Key, PersonId, StateKey } from '@/lib/domain/base/vocabulary';
import type { Car } from '@/lib/domain/car/rows';
import type { CarClaim } from '@/lib/domain/commands';
import { jobClaims, verifying } from '@/seed/acts';
import type { Site } from '@/seed/acts';
import { DEMO_LEAD, DEMO_OWNER } from '@/seed/demo-shop';
import type { Driver } from '@/seed/driver';
import type { Calendar } from './calendar';
import { runOperation } from './operation-run';
import type { RunOptions } from './operation-run';
import type { Rota } from './rota';

export interface Floor {
  readonly driver: Driver;
  readonly calendar: Calendar;
  readonly rota: Rota;
}

/** A claim about this car; which one is understood. */
export type Told = CarClaim extends infer One ? (One extends CarClaim ? Omit<One, 'car'> : never) : never;

const MINUTE = 60_000;
const GONE_OVER: ReadonlySet<Job['kind']> = new Set<Job['kind']>(['stopgap', 'check']);

export class CarWork {
  readonly floor: Floor;
  readonly car: CarId;
  /** Things that the crew leaves alone for now. */
  readonly leave = new Set<StateKey>();
  /** What happens when work comes to this joint or check, told by whoever has it in hand. */
  readonly asides = new Map<StateKey, (by: PersonId) => void>();
  private people: readonly PersonId[];
  private at = 0;

  constructor(floor: Floor, car: CarId, crew: readonly PersonId[]) {
    this.floor = floor;
    this.car = car;
    this.people = crew;
  }

  get crew(): readonly PersonId[] {
    return this.people;
  }

  get now(): number {
    return this.at;
  }

  get row(): Car {
    return this.site().car;
  }

  /** It is this time of that day, so many working days before the last. */
  goTo(daysBefore: number, time: string): void {
    const { calendar } = this.floor;
    const day = calendar.day(daysBefore);
    const at = calendar.at(day, time);
    if (at < this.at)
      throw new Error(`${this.car} is past ${day} ${time}: ${new Date(this.at).toISOString()}`);
    this.at = at;
  }

  /** It is that time at the earliest. */
  from(daysBefore: number, time: string): void {
    const { calendar } = this.floor;
    this.waitUntil(calendar.at(calendar.day(daysBefore), time));
  }

  waitUntil(milliseconds: number): void {
    this.at = Math.max(this.at, milliseconds);
  }

  pass(minutes: number): void {
    this.at += minutes * MINUTE;
  }

  /** One command that must be accepted. */
  say(by: PersonId, told: Told): void {
    this.driver().must(by, this.claim(told));
    this.pass(1);
  }

  /** Done so many minutes ago on a tablet that was out of touch, and heard only now. */
  sayLate(by: PersonId, told: Told, { device, minutes }: { device: string; minutes: number }): void {
    const ago = (each: number): string => new Date(this.at - each * MINUTE).toISOString();
    const late = { doneAt: ago(minutes), device, lastContact: ago(minutes + 12) };
    this.driver().must(by, this.claim(told), late);
    this.pass(1);
  }

  /** One command that must be refused, and stays on record as such. */
  inVain(by: PersonId, told: Told, codes: readonly RefusalCode[]): void {
    this.driver().tryInVain(by, this.claim(told), codes);
    this.pass(1);
  }

  /** The first of these claims that is accepted, or null. Those before it were never made. */
  tryAll(by: PersonId, claims: readonly CarClaim[]): CarClaim | null {
    for (const claim of claims) {
      if (this.driver().give(by, claim).length > 0) continue;
      this.pass(1);
      return claim;
    }
    return null;
  }

  site(): Site {
    return this.driver().site(this.car);
  }

  assess(): Assessment {
    return this.driver().assess(this.car);
  }

  /** From this day's morning on, or when the work before it is done: the stage is given to its crew, and everything that its gate asks is done. */
  stage(daysBefore: number, crew: readonly PersonId[]): void {
    this.from(daysBefore, '08:00');
    this.give(crew);
    this.work();
  }

  /** The stage is given to a crew; two of them stand on the plate. */
  give(crew: readonly PersonId[]): void {
    this.people = crew;
    this.crewOf(`stage:${this.assess().stage}`, crew.slice(0, 2));
  }

  /** One job is given to somebody by name. */
  assign(kind: Job['kind'], key: StateKey, people: readonly PersonId[]): void {
    const job = this.assess().jobs.find((each) => each.kind === kind && each.key === key);
    if (job === undefined) throw new Error(`${this.car} has no job ${kind} ${key}`);
    this.crewOf(job.id, people);
  }

  /** Those who are on it go, these come. */
  private crewOf(job: string, people: readonly PersonId[]): void {
    const before = this.site().car.assignments[job]?.people ?? [];
    const remove = before.filter((person) => !people.includes(person));
    const add = people.filter((person) => !before.includes(person));
    this.say(DEMO_LEAD, {
      type: 'assign',
      job,
      add,
      ...(remove.length === 0 ? {} : { remove }),
    });
  }

  /** Works on until the gate is open, or nothing is left but what is left alone. */
  work(): void {
    for (;;) {
      const assessment = this.assess();
      if (assessment.gate.unmet.length === 0) return;
      if (this.settle(assessment)) continue;
      const next = assessment.jobs.find((job) => job.kind === 'operation' && this.isFree(job, 'ready'));
      if (next !== undefined) this.operation(next.key);
      else if (!this.choose(assessment) && !this.sleep(assessment.jobs)) return;
    }
  }

  /** The gate is open: the lead moves the car on. */
  advance(to: Key): void {
    this.waitUntil(this.floor.calendar.opening(this.at + 10 * MINUTE));
    this.say(DEMO_LEAD, { type: 'advance-car', to });
  }

  /** One operation from start to finish, or to where it is left. */
  operation(key: StateKey, options: RunOptions = {}): void {
    runOperation(this, key, options);
  }

  /** Every joint that waits for a second person gets one, whichever gate will ask for it. */
  lookAll(): void {
    for (const { kind, key } of this.assess().jobs)
      if (kind === 'verify' && !this.leave.has(key)) this.look(key);
  }

  /** A second person makes sure of the joint: whoever the rules take, those who are not on the car first. */
  look(joint: StateKey, by?: PersonId): void {
    this.pass(2);
    const claims = verifying(this.site(), joint);
    const eyes = by === undefined ? [...this.others(), ...this.crew.toReversed()] : [by];
    if (!eyes.some((person) => this.tryAll(person, claims) !== null))
      throw new Error(`nobody can verify ${joint} on ${this.car}`);
  }

  /** The crew first, then the others; not the owner, who is in the office. */
  everybody(): readonly PersonId[] {
    return [...this.crew, ...this.others()];
  }

  private others(): readonly PersonId[] {
    const people = Object.keys(this.floor.driver.world.shop.people).toReversed();
    return people.filter((person) => person !== DEMO_OWNER && !this.crew.includes(person));
  }

  private driver(): Driver {
    this.floor.driver.setClock(new Date(this.at).toISOString());
    return this.floor.driver;
  }

  private claim(told: Told): CarClaim {
    return { ...told, car: this.car };
  }

  private isFree(job: Job, ...states: readonly Job['state'][]): boolean {
    return job.due <= this.row.stage && states.includes(job.state) && !this.leave.has(job.key);
  }

  /** One job besides operations, by whoever may: what was opened, found or doubted on the way. */
  private settle({ jobs }: Assessment): boolean {
    // What hangs and what is to be looked at again is gone over each time, whether or not its work is there yet.
    const open = jobs.filter(
      (job) =>
        job.kind !== 'operation' &&
        (this.isFree(job, 'ready', 'running') || (GONE_OVER.has(job.kind) && this.isFree(job, 'waiting'))),
    );
    for (const job of open) {
      if (job.kind === 'verify') {
        this.look(job.key);
        return true;
      }
      this.pass(12);
      const claims = jobClaims(this.site(), job);
      if (!this.everybody().some((person) => this.tryAll(person, claims) !== null)) continue;
      return true;
    }
    return false;
  }

  /** An option that this gate asks for is chosen as usual. */
  private choose({ gate }: Assessment): boolean {
    const asked = gate.unmet.find(isUndecided);
    if (asked === undefined) return false;
    const { option, choices } = asked.details;
    const usual = this.site().plan.document.options?.[option]?.usual;
    this.say(DEMO_LEAD, { type: 'choose-option', option, choice: usual ?? choices[0] ?? '' });
    return true;
  }

  /** Paint dries and sealer cures; false where nothing waits for time. */
  private sleep(jobs: readonly Job[]): boolean {
    const ends = jobs
      .flatMap((job) => job.waitsFor)
      .flatMap((refusal) => (refusal.code === 'wait-running' ? [refusal.details.until] : []))
      .flatMap((until) => (until === null ? [] : [Date.parse(until)]))
      .filter((until) => until > this.at);
    if (ends.length === 0) return false;
    this.at = this.floor.calendar.opening(Math.min(...ends));
    return true;
  }
}

const isUndecided = (refusal: Refusal): refusal is Extract<Refusal, { code: 'option-undecided' }> =>
  refusal.code === 'option-undecided';
