/** A plan and a day's lines, read and played; or the answer that says why not. */
import { err, ok } from '@/lib/domain/base/result';
import type { Result } from '@/lib/domain/base/result';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { planHash } from '@/lib/wire/plan-hash';
import { readLines } from '@/lib/wire/read-lines';
import { readPlan } from '@/lib/wire/read-plan';
import { isZone, shopDay } from '@/lib/wire/shop-day';
import { unusable } from './answer';
import type { Answer } from './answer';
import { errorsIn, printProblems } from './check-plan';
import type { Ink } from './ink';
import { playLines } from './play-lines';
import type { PlayedDay } from './play-lines';
import { readText } from './read-file';

export interface ReadDay {
  readonly document: PlanDocument;
  readonly hash: string;
  readonly day: PlayedDay;
}

export const readDay = (
  planFile: string,
  linesFile: string,
  zone: string,
  ink: Ink,
): Result<ReadDay, Answer> => {
  if (!isZone(zone)) return err(unusable(`“${zone}” is no time zone. Write one as Europe/Rome or UTC.`));
  const planText = readText(planFile);
  const linesText = readText(linesFile);
  const unreadable = [planText, linesText].flatMap((read) => (read.ok ? [] : [read.error]));
  if (!planText.ok || !linesText.ok) return err(unusable(...unreadable));
  const { document, problems } = readPlan(planText.value);
  const errors = errorsIn(problems);
  if (document === null || errors.length > 0)
    return err({
      exit: 1,
      out: [],
      problems: [...printProblems(planFile, errors, ink), 'Nothing is played on a plan that has errors.'],
    });
  const hash = planHash(document);
  const lines = readLines(linesText.value, { zone, plan: hash });
  if (!lines.ok)
    return err(
      unusable(
        ...lines.error.map(
          ({ line, path, sentence }) =>
            `${linesFile}:${String(line)}: ${path === '' ? '' : `${path}: `}${sentence}`,
        ),
      ),
    );
  if (lines.value.length === 0) return err(unusable(`${linesFile} holds no line to play.`));
  return ok({
    document,
    hash,
    day: playLines(lines.value, { plans: { [hash]: document }, dayOf: shopDay(zone) }),
  });
};
