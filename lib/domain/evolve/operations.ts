/** Runs of operations: started, left, taken up again, finished, due once more. */
import type { Car, OperationRow, UsedUp } from '@/lib/domain/car/rows';
import type { CarEvent } from '@/lib/domain/events';

type Of<Type extends CarEvent['type']> = Extract<CarEvent, { type: Type }>;

const FRESH: Omit<OperationRow, 'run' | 'status' | 'earlierCrews' | 'used'> = {
  crew: [],
  present: [],
  startedAt: null,
  finishedAt: null,
  finishedReceivedAt: null,
  finishSignature: null,
  waitMs: 0,
  waitEnded: false,
  leftAs: null,
  why: null,
};

const put = (car: Car, operation: string, row: OperationRow): Car => ({
  ...car,
  operations: { ...car.operations, [operation]: row },
});

const change = (car: Car, operation: string, by: (row: OperationRow) => Partial<OperationRow>): Car => {
  const row = car.operations[operation];
  return row === undefined ? car : put(car, operation, { ...row, ...by(row) });
};

const withPerson = (people: readonly string[], person: string): readonly string[] =>
  people.includes(person) ? people : [...people, person];

/** What was used up stays so, whatever run comes next. */
const withUsed = (used: readonly UsedUp[] = []): Pick<OperationRow, 'used'> =>
  used.length === 0 ? {} : { used };

const crewsBefore = (row: OperationRow | undefined, run: number): OperationRow['earlierCrews'] => {
  if (row === undefined) return {};
  return row.run === run ? row.earlierCrews : { ...row.earlierCrews, [String(row.run)]: row.crew };
};

export const operationStarted = (car: Car, event: Of<'operation-started'>): Car =>
  put(car, event.operation, {
    ...FRESH,
    run: event.run,
    status: 'running',
    earlierCrews: crewsBefore(car.operations[event.operation], event.run),
    crew: [event.meta.by],
    present: [event.meta.by],
    startedAt: event.meta.at,
    ...withUsed(car.operations[event.operation]?.used),
  });

export const operationJoined = (car: Car, event: Of<'operation-joined'>): Car =>
  change(car, event.operation, (row) => ({
    crew: withPerson(row.crew, event.meta.by),
    present: withPerson(row.present, event.meta.by),
  }));

export const operationPaused = (car: Car, event: Of<'operation-paused'>): Car =>
  change(car, event.operation, () => ({ status: 'paused', present: [], leftAs: event.leftAs }));

export const operationLeft = (car: Car, event: Of<'operation-left'>): Car =>
  change(car, event.operation, (row) => ({
    present: row.present.filter((person) => person !== event.meta.by),
  }));

export const operationResumed = (car: Car, event: Of<'operation-resumed'>): Car =>
  change(car, event.operation, (row) => ({
    status: 'running',
    crew: withPerson(row.crew, event.meta.by),
    present: event.takenOver ? [event.meta.by] : withPerson(row.present, event.meta.by),
  }));

export const operationFinished = (car: Car, event: Of<'operation-finished'>): Car =>
  change(car, event.operation, ({ used = [] }) => ({
    status: 'finished',
    present: [],
    finishedAt: event.meta.at,
    finishedReceivedAt: event.meta.receivedAt,
    finishSignature: event.meta.command,
    waitMs: event.waitMs,
    waitEnded: false,
    leftAs: null,
    ...withUsed([...used, ...ofLots(event)]),
  }));

const ofLots = ({ drawn = [], run }: Of<'operation-finished'>): readonly UsedUp[] =>
  drawn.flatMap(({ item, lot, quantity }) => (lot === null ? [] : [{ item, lot, quantity, run }]));

export const operationDueAgain = (car: Car, event: Of<'operation-due-again'>): Car =>
  put(car, event.operation, {
    ...FRESH,
    run: event.run,
    status: 'due-again',
    earlierCrews: crewsBefore(car.operations[event.operation], event.run),
    why: event.because,
    ...withUsed(car.operations[event.operation]?.used),
  });

/** A struck finish: the same run is open again, and nobody is at it. */
export const operationReopened = (car: Car, event: Of<'operation-reopened'>): Car =>
  change(car, event.operation, (row) => ({
    status: event.leftAs === undefined ? 'running' : 'paused',
    leftAs: event.leftAs ?? row.leftAs,
    finishedAt: null,
    finishedReceivedAt: null,
    finishSignature: null,
    waitEnded: false,
  }));

export const waitEnded = (car: Car, event: Of<'wait-ended'>): Car =>
  change(car, event.operation, () => ({ waitEnded: true }));
