/** Rounds of checks. */
import type { Car, CheckRow } from '@/lib/domain/car/rows';
import type { CarEvent } from '@/lib/domain/events';

type Of<Type extends CarEvent['type']> = Extract<CarEvent, { type: Type }>;

const FRESH: CheckRow = {
  round: 1,
  status: 'running',
  begunAt: null,
  by: null,
  at: null,
  signature: null,
  values: {},
  finding: null,
  why: null,
};

const put = (car: Car, check: string, row: CheckRow): Car => ({
  ...car,
  checks: { ...car.checks, [check]: row },
});

export const checkBegun = (car: Car, event: Of<'check-begun'>): Car =>
  put(car, event.check, {
    ...FRESH,
    round: event.round,
    begunAt: event.meta.at,
    by: event.meta.by,
    finding: car.checks[event.check]?.finding ?? null,
  });

export const checkPassed = (car: Car, event: Of<'check-passed'>): Car =>
  put(car, event.check, {
    ...FRESH,
    round: event.round,
    status: 'clear',
    by: event.meta.by,
    at: event.meta.at,
    signature: event.meta.command,
    values: event.values,
  });

export const checkFailed = (car: Car, event: Of<'check-failed'>): Car =>
  put(car, event.check, {
    ...FRESH,
    round: event.round,
    status: 'failed',
    by: event.meta.by,
    at: event.meta.at,
    values: event.values,
    finding: event.finding,
    why: event.reason,
  });

export const checkDueAgain = (car: Car, event: Of<'check-due-again'>): Car =>
  put(car, event.check, {
    ...FRESH,
    round: event.round,
    status: 'due-again',
    finding: car.checks[event.check]?.finding ?? null,
    why: event.because,
  });

export const checkConceded = (car: Car, event: Of<'check-conceded'>): Car => {
  const row = car.checks[event.check];
  return put(car, event.check, {
    ...FRESH,
    ...row,
    round: event.round,
    status: 'conceded',
    why: event.change,
  });
};
