/** Findings, changes, holds, stopgaps and signatures for the forms, each with what deciding it would bring. */
import { DISPOSITIONS } from '@/lib/domain/base/vocabulary';
import type { Disposition } from '@/lib/domain/base/vocabulary';
import type { ChangeRow, FindingRow, SignatureRow } from '@/lib/domain/car/rows';
import { closingRefusals } from '@/lib/domain/decide/findings';
import { sentence } from '@/lib/domain/base/sentences';
import type {
  ChangeThing,
  Desk,
  DispositionChoice,
  FindingThing,
  SignatureThing,
} from '@/lib/wire/views/desk';
import { afterwards, brings, foresee, linesBut } from './foresee';
import type { Seen } from './seen';
import type { Acts } from './who-may';

export const findingThings = (seen: Seen): Desk['findings'] =>
  Object.fromEntries(
    Object.entries(seen.car.findings)
      .filter(([, row]) => row.state !== 'closed')
      .map(([id, row]) => [id, findingThing(seen, id, row)]),
  );

const findingThing = (seen: Seen, id: string, row: FindingRow): FindingThing => ({
  about: row.about.kind === 'place' ? row.about.key : seen.words.thing(row.about.key),
  text: row.text,
  dispositions:
    row.state === 'undecided' ? DISPOSITIONS.map((each) => dispositionChoice(seen, id, row, each)) : [],
});

/** The rules are tried with it: what happens at once, and what the finding then waits for until it is closed. */
const dispositionChoice = (
  seen: Seen,
  id: string,
  row: FindingRow,
  disposition: Disposition,
): DispositionChoice => {
  const claim = { type: 'decide-finding', car: seen.car.id, finding: id, disposition, reason: '' } as const;
  const foreseen = foresee(seen, claim);
  if (foreseen === null)
    return {
      disposition,
      barred: 'The plan says: never to be taken as it is. The owner can’t either.',
      brings: [],
    };
  const car = afterwards(seen, foreseen);
  const after = car?.findings[id];
  const waits =
    car === undefined || after === undefined || after.state === 'closed'
      ? ['The finding is closed at once.']
      : closingRefusals({ ...seen.at, car }, id, after).map((refusal) =>
          seen.spoken(sentence(refusal, seen.nameOf)),
        );
  return {
    disposition,
    barred: null,
    brings: [
      ...linesBut(seen, foreseen, 'finding-decided', 'finding-closed'),
      ...(waits.length === 0 ? [closesWith(row)] : waits),
    ],
  };
};

const closesWith = (row: FindingRow): string =>
  row.about.kind === 'part'
    ? 'The part can’t be fitted until the finding is closed by hand, once the work is done.'
    : 'It is closed by hand, once the work is done.';

export const changeThings = (seen: Seen): Desk['changes'] =>
  Object.fromEntries(
    Object.entries(seen.car.changes)
      .filter(([, row]) => row.state === 'asked')
      .map(([id, row]) => [id, changeThing(seen, row)]),
  );

const changeThing = (seen: Seen, row: ChangeRow): ChangeThing => ({
  says: editWords(seen, row),
  reason: row.reason,
  critical: row.critical,
  approvals: row.approvals.map(({ by, owner, at }) => `${seen.tag(by, at).name}${owner ? ', owner' : ''}`),
});

export const editWords = (seen: Seen, row: ChangeRow): string =>
  row.edits
    .map((edit) =>
      'wait' in edit
        ? `End the wait after ${seen.words.thing(edit.wait)} early`
        : `Take ${edit.finding} as it is: ${seen.car.findings[edit.finding]?.text ?? ''}`,
    )
    .join('. ');

export const holdThings = (seen: Seen): Desk['holds'] =>
  Object.fromEntries(
    Object.entries(seen.car.holds)
      .filter(([, row]) => row.releasedBy === null)
      .map(([id, { scope, reason }]) => [id, { scope, reason }]),
  );

export const stopgapThings = (seen: Seen): Desk['stopgaps'] =>
  Object.fromEntries(
    Object.entries(seen.car.stopgaps)
      .filter(([, row]) => row.removed < row.placed)
      .map(([id, row]) => [
        id,
        {
          name: row.what,
          placed: row.placed,
          left: row.placed - row.removed,
          where: row.where,
          outBy: seen.words.stage(row.outBy),
        },
      ]),
  );

export const plannedStopgaps = (seen: Seen): Desk['planned'] =>
  Object.fromEntries(
    [...seen.plan.stopgaps.values()]
      .filter(({ undecided }) => undecided.length === 0)
      .map(({ key, name, quantity, due }) => [key, { name, quantity, outBy: seen.words.stage(due) }]),
  );

/** A page shows this many, the newest first; an older one is struck from its line in the log. */
const SIGNATURES_SHOWN = 40;

export const signatureThings = (seen: Seen, acts: Acts, named: string | null): Desk['signatures'] => {
  const standing = Object.entries(seen.car.signatures)
    .filter(([, row]) => row.struck === null)
    .sort(([, a], [, b]) => (a.at < b.at ? 1 : -1));
  const shown = standing.filter(([id], index) => index < SIGNATURES_SHOWN || id === named);
  return Object.fromEntries(shown.map(([id, row]) => [id, signatureThing(seen, acts, id, row)]));
};

const signatureThing = (seen: Seen, acts: Acts, id: string, row: SignatureRow): SignatureThing => ({
  says: seen.words.signature(id),
  by: row.by,
  when: seen.when(row.at),
  striking: brings(
    seen,
    { type: 'strike-signature', car: seen.car.id, signature: id, reason: '' },
    'signature-struck',
  ),
  why: acts.act('strike-signature', 'signature', id).why,
});
