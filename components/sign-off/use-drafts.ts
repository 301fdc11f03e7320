'use client';

/** The sitting on the sheet and the drafts of this device: every change is kept before the next can be made. */
import { useCallback, useEffect, useRef, useState } from 'react';
import { announce } from '@/components/ui/live-region';
import { openDrafts } from '@/lib/offline/drafts';
import type { Draft, DraftKey } from '@/lib/offline/drafts';
import type { SignOffView } from '@/lib/wire/views/sign-off';
import { isSitting } from './model/is-sitting';
import { EMPTY_SITTING, countOf, isBegun, isOwed } from './model/sitting';
import type { Sitting } from './model/sitting';
import { wayId, wayOf } from './model/ways';
import type { Way } from './model/ways';

const drafts = openDrafts(isSitting);

/** A device that keeps nothing must not keep the hand waiting. */
const PATIENCE_MS = 2000;

export interface Seat {
  readonly worker: string;
  readonly way: Way | null;
}

export interface SittingNow {
  readonly seat: Seat;
  readonly sitting: Sitting;
  /** Drafts have been looked for: until then nothing is entered. */
  readonly isReady: boolean;
  /** Does this device keep drafts? */
  readonly isKept: boolean;
  /** When the draft was begun that was brought back; null = begun here and now. */
  readonly broughtBack: string | null;
  /** Of others, and of another cycle or tool. */
  readonly others: readonly Draft<Sitting>[];
  readonly change: (by: (sitting: Sitting) => Sitting) => Promise<void>;
  /** Throws the sitting away, and says so; what is owed stays. */
  readonly discard: () => Promise<void>;
  /** It is signed: the draft has done its work. */
  readonly settle: () => Promise<void>;
  readonly changeOther: (draft: Draft<Sitting>, by: (sitting: Sitting) => Sitting) => Promise<void>;
  readonly discardOther: (draft: Draft<Sitting>) => Promise<void>;
  /** Another person or another tool: each begins with their own draft, or anew. */
  readonly sitDown: (seat: Seat) => void;
}

interface State {
  readonly seat: Seat;
  readonly sitting: Sitting;
  readonly broughtBack: string | null;
}

export const useDrafts = (view: SignOffView, first: Seat): SittingNow => {
  const [state, setState] = useState<State>({ seat: first, sitting: EMPTY_SITTING, broughtBack: null });
  const [found, setFound] = useState<readonly Draft<Sitting>[] | null>(null);
  const [isKept, setKept] = useState(true);
  const car = view.car.id;
  const { key: joint, cycle, word } = view.joint;
  const now = useRef(state);
  now.current = state;

  const keyOf = useCallback(
    ({ worker, way }: Seat): DraftKey => ({ person: worker, car, joint, cycle, tool: wayId(way) }),
    [car, joint, cycle],
  );

  const put = useCallback((next: State): void => {
    now.current = next;
    setState(next);
  }, []);

  // Once for each cycle: what this device has is looked for, and what an earlier cycle left is cleared away aloud.
  useEffect(() => {
    let isGone = false;
    const nothing = new Promise<null>((resolve) => {
      setTimeout(resolve, PATIENCE_MS, null);
    });
    const look = async (): Promise<void> => {
      const list = await Promise.race([drafts.on(car, joint), nothing]).catch(() => null);
      if (isGone) return;
      if (list === null) setKept(false);
      const { seat } = now.current;
      const closed = (list ?? []).filter(
        ({ key, body }) => key.person === seat.worker && key.cycle < cycle && !isOwed(body),
      );
      for (const { key } of closed) void drafts.discard(key);
      if (closed.length > 0) announce(`The draft of cycle ${String(closed[0]?.key.cycle)} is closed.`);
      const left = (list ?? []).filter((draft) => !closed.includes(draft));
      setFound(left);
      const own = left.find(({ key }) => key.person === seat.worker && key.cycle === cycle);
      put(
        own === undefined
          ? { seat, sitting: EMPTY_SITTING, broughtBack: null }
          : { seat: { ...seat, way: wayOf(own.key.tool) }, sitting: own.body, broughtBack: own.begunAt },
      );
    };
    void look();
    return () => {
      isGone = true;
    };
  }, [car, joint, cycle, put]);

  const store = useCallback(
    async (seat: Seat, sitting: Sitting): Promise<void> => {
      const key = keyOf(seat);
      const isEmpty = !isBegun(sitting) && !isOwed(sitting) && sitting.hardware.length === 0;
      try {
        await (isEmpty ? drafts.discard(key) : drafts.save(key, sitting));
        setKept(true);
      } catch {
        setKept(false);
      }
    },
    [keyOf],
  );

  const change = useCallback(
    async (by: (sitting: Sitting) => Sitting): Promise<void> => {
      const before = now.current;
      const sitting = by(before.sitting);
      if (sitting === before.sitting) return;
      put({ ...before, sitting });
      await store(before.seat, sitting);
    },
    [put, store],
  );

  const discard = useCallback(async (): Promise<void> => {
    const { seat, sitting } = now.current;
    const kept: Sitting = { ...EMPTY_SITTING, over: sitting.over, pending: sitting.pending };
    put({ seat, sitting: isOwed(sitting) ? kept : EMPTY_SITTING, broughtBack: null });
    await store(seat, now.current.sitting);
    if (isBegun(sitting)) announce(`Draft discarded: ${countOf(sitting, word)}.`);
  }, [put, store, word]);

  const isOwn = ({ key }: Draft<Sitting>): boolean =>
    key.person === state.seat.worker && key.cycle === cycle && key.tool === wayId(state.seat.way);

  return {
    ...state,
    isReady: found !== null,
    isKept,
    others: (found ?? []).filter((draft) => !isOwn(draft) && isBegun(draft.body)),
    change,
    discard,
    settle: async () => {
      put({ ...now.current, sitting: EMPTY_SITTING, broughtBack: null });
      await store(now.current.seat, EMPTY_SITTING);
    },
    changeOther: async (draft, by) => {
      const after = { ...draft, body: by(draft.body) };
      setFound((list) => (list ?? []).map((each) => (each === draft ? after : each)));
      await drafts.save(draft.key, after.body).catch(() => undefined);
    },
    discardOther: async (draft) => {
      setFound((list) => (list ?? []).filter((each) => each !== draft));
      await drafts.discard(draft.key).catch(() => undefined);
      announce(`Draft discarded: ${countOf(draft.body, word)}.`);
    },
    sitDown: (seat) => {
      const own = (found ?? []).find(
        ({ key }) => key.person === seat.worker && key.cycle === cycle && key.tool === wayId(seat.way),
      );
      put({ seat, sitting: own?.body ?? EMPTY_SITTING, broughtBack: own?.begunAt ?? null });
    },
  };
};
