'use client';

import { useEffect, useMemo, useState } from 'react';
import { reasonKey, stillRefused } from '@/lib/domain/still-refused';
import type { SentAnswer } from '@/lib/offline/send-command';
import type { SaidRefusal } from '@/lib/wire/door';
import type { ActRef, Desk } from '@/lib/wire/views/desk';

export interface Followed {
  readonly standing: readonly SaidRefusal[];
  /** Cleared since the answer, here or elsewhere. */
  readonly cleared: readonly SaidRefusal[];
}

const NONE: readonly SaidRefusal[] = [];

/** A refusal that stands open, kept in step with the page: the rules that made the page say what still holds. */
export const useFollowed = (answer: SentAnswer | null, act: ActRef, desk: Desk): Followed | null => {
  const said = answer?.outcome === 'refused' ? answer.refusals : null;
  const now = useMemo(
    () => (act.reasons ?? []).flatMap((index) => desk.reasons[index] ?? []),
    [act.reasons, desk.reasons],
  );
  const [heard, setHeard] = useState<{ readonly of: typeof said; readonly keys: ReadonlySet<string> }>({
    of: null,
    keys: new Set(),
  });
  useEffect(() => {
    setHeard((before) => ({
      of: said,
      keys: new Set([
        ...(before.of === said ? before.keys : []),
        ...now.map(({ refusal }) => reasonKey(refusal)),
      ]),
    }));
  }, [said, now]);
  if (said === null) return null;
  return stillRefused({ said, now: heard.of === said ? now : NONE, seen: heard.keys });
};
