/** Findings and the changes that settle them. */
import type { Car, ChangeRow, FindingRow } from '@/lib/domain/car/rows';
import type { CarEvent } from '@/lib/domain/events';

type Of<Type extends CarEvent['type']> = Extract<CarEvent, { type: Type }>;

const finding = (car: Car, id: string, by: Partial<FindingRow>): Car => {
  const row = car.findings[id];
  return row === undefined ? car : { ...car, findings: { ...car.findings, [id]: { ...row, ...by } } };
};

const change = (car: Car, id: string, by: (row: ChangeRow) => Partial<ChangeRow>): Car => {
  const row = car.changes[id];
  return row === undefined ? car : { ...car, changes: { ...car.changes, [id]: { ...row, ...by(row) } } };
};

export const findingOpened = (car: Car, event: Of<'finding-opened'>): Car => ({
  ...car,
  findings: {
    ...car.findings,
    [event.finding]: {
      about: event.about,
      text: event.text,
      check: event.check,
      due: event.due,
      workDue: event.workDue,
      critical: event.critical,
      state: 'undecided',
      disposition: null,
      replaced: false,
      change: null,
      by: event.meta.by,
      at: event.meta.at,
      decidedBy: null,
      closedBy: null,
    },
  },
});

export const findingDecided = (car: Car, event: Of<'finding-decided'>): Car =>
  finding(car, event.finding, {
    state: 'decided',
    disposition: event.disposition,
    replaced: event.disposition === 'replace' || event.disposition === 'scrap',
    change: event.change,
    decidedBy: event.meta.by,
  });

export const findingClosed = (car: Car, event: Of<'finding-closed'>): Car =>
  finding(car, event.finding, { state: 'closed', closedBy: event.meta.by });

/** Its change was declined, or what closed it was struck: it must be decided again. */
export const findingReopened = (car: Car, event: Of<'finding-reopened'>): Car =>
  finding(car, event.finding, {
    state: 'undecided',
    disposition: null,
    replaced: false,
    change: null,
    decidedBy: null,
    closedBy: null,
  });

export const changeAsked = (car: Car, event: Of<'change-asked'>): Car => ({
  ...car,
  changes: {
    ...car.changes,
    [event.change]: {
      edits: event.edits,
      reason: event.reason,
      due: event.due,
      critical: event.critical,
      state: 'asked',
      requestedBy: event.meta.by,
      performers: event.performers,
      approvals: [],
      at: event.meta.at,
    },
  },
});

export const changeApproved = (car: Car, event: Of<'change-approved'>): Car =>
  change(car, event.change, (row) => ({
    state: event.complete ? 'approved' : row.state,
    approvals: [...row.approvals, { by: event.meta.by, owner: event.owner, at: event.meta.at }],
  }));

export const changeDeclined = (car: Car, event: Of<'change-declined'>): Car =>
  change(car, event.change, () => ({ state: 'declined' }));
