/** A played line as people read it: who asked for what, yes or no, and what came of it or stands against it. */
import type { Refusal } from '@/lib/domain/base/refusals';
import { sentence } from '@/lib/domain/base/sentences';
import type { NameOf } from '@/lib/domain/base/sentences';
import { counted } from '@/lib/domain/base/words';
import type { Claim } from '@/lib/domain/commands';
import type { Expectation } from '@/lib/wire/read-lines';
import { eventWords } from './event-words';
import type { Ink } from './ink';
import { OWN_EVENT } from './own-event';
import { ID_USED } from './play-lines';
import type { PlayedLine } from './play-lines';

export interface Page {
  readonly ink: Ink;
  readonly nameOf: NameOf;
}

interface Calendar {
  readonly dayOf: (at: string) => string;
  readonly timeOf: (at: string) => string;
}

/** All lines in columns, with a heading for each new day. */
export const printLines = (
  lines: readonly PlayedLine[],
  page: Page,
  calendar: Calendar,
): readonly string[] => {
  const rows = lines.map((played) => ({ played, said: saidBy(played) }));
  const widest = (texts: readonly string[]): number => Math.max(0, ...texts.map((text) => text.length));
  const numbers = widest(lines.map(({ read }) => String(read.number)));
  const people = widest(lines.map(({ read }) => read.line.by));
  const commands = widest(rows.map(({ said }) => said));
  const printed: string[] = [];
  let day = '';
  for (const { played, said } of rows) {
    const { now, by } = played.read.line;
    if (calendar.dayOf(now) !== day) {
      day = calendar.dayOf(now);
      printed.push(page.ink.strong(day));
    }
    const columns = [
      String(played.read.number).padStart(numbers + 2),
      calendar.timeOf(now),
      by.padEnd(people),
      said.padEnd(commands),
      answer(played, page.ink),
    ];
    printed.push(columns.join('  '), ...whatFollows(played, page, ' '.repeat(numbers + 4)));
  }
  return printed;
};

const saidBy = ({ read }: PlayedLine): string => {
  const { claim } = read.line.command;
  return ['car' in claim ? claim.car : '', claim.type, subjectOf(claim)]
    .filter((part) => part !== '')
    .join(' ');
};

/** Fields that say what a claim is about, the most telling first. */
const SUBJECTS = [
  'joint',
  'operation',
  'check',
  'stopgap',
  'condition',
  'finding',
  'change',
  'hold',
  'option',
  'part',
  'signature',
  'wait',
  'to',
  'tool',
  'lot',
  'adapter',
  'person',
  'job',
  'of',
  'what',
  'scope',
] as const;

const subjectOf = (claim: Claim): string => {
  if (claim.type === 'report-finding') return claim.about.key;
  const fields: ReadonlyMap<string, unknown> = new Map(Object.entries(claim));
  const found = SUBJECTS.map((field) => fields.get(field)).find((value) => typeof value === 'string');
  return found ?? '';
};

const answer = ({ verdict, read, isAsExpected, twinOf }: PlayedLine, ink: Ink): string => {
  const word = verdict.kind === 'accepted' ? ink.good('yes') : ink.bad('no');
  const twin = twinOf === null ? '' : `  already done, answered as on line ${String(twinOf)}`;
  return `${word}${twin}${isAsExpected ? '' : ink.bad(`  ← expected ${wanted(read.expect)}`)}`;
};

const wanted = (expect: Expectation): string =>
  typeof expect === 'string' ? expect : `no: ${expect.join(', ')}`;

const whatFollows = (played: PlayedLine, page: Page, indent: string): readonly string[] => {
  const { verdict, read, twinOf } = played;
  if (twinOf !== null) return [];
  switch (verdict.kind) {
    case 'accepted': {
      const own = verdict.events.findIndex(({ type }) => type === OWN_EVENT[read.line.command.claim.type]);
      return verdict.events
        .filter((_, at) => at !== own)
        .map((event) => page.ink.faint(`${indent}→ ${eventWords(event)}`));
    }
    case 'refused':
      return printRefusals(verdict.refusals, page, indent);
    case 'id-used':
      return [`${indent}${page.ink.bad(ID_USED)}  ${idUsedSentence(read.line.command.id, verdict.first)}`];
  }
};

export const idUsedSentence = (id: string, first: number): string =>
  `The id “${id}” belongs to another command, on line ${String(first)}. Give this one an id of its own.`;

/** Code and sentence of each, with what stands under it one step deeper. */
export const printRefusals = (refusals: readonly Refusal[], page: Page, indent: string): readonly string[] =>
  refusals.flatMap((refusal) => {
    const soft = refusal.soft === true ? ' (The lead may override this.)' : '';
    return [
      `${indent}${page.ink.bad(refusal.code)}  ${sentence(refusal, page.nameOf)}${soft}`,
      ...under(refusal, page, `${indent}  `),
    ];
  });

/** What work that nobody has begun will bring is counted, not told one by one: starting it is what clears it. */
const under = (refusal: Refusal, page: Page, indent: string): readonly string[] => {
  const things = refusal.under ?? [];
  const isToCome = refusal.code === 'operation-unfinished' && refusal.details.status === 'not started';
  if (!isToCome) return printRefusals(things, page, indent);
  const joints = things.filter(({ code }) => code.startsWith('joint-')).length;
  const counts = [
    ...(joints === 0 ? [] : [counted(joints, 'joint')]),
    ...(joints === things.length ? [] : [counted(things.length - joints, 'check')]),
  ];
  return counts.length === 0 ? [] : [page.ink.faint(`${indent}with ${counts.join(' and ')}`)];
};
