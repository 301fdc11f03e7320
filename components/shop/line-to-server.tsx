'use client';

import { Glyph } from '@/components/ui/glyph';
import { KeepInStep } from './keep-in-step';
import { useLine } from './use-line';

const timeOf = (at: number): string =>
  new Date(at).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });

/**
 * The wire at the top: whether what one does here reaches the others, and what they do reaches here. `isAtDoor`: nobody
 * is signed in yet, and the page is there for just that.
 */
export function LineToServer({ isAtDoor = false }: { readonly isAtDoor?: boolean }) {
  const { touch, since, clock } = useLine();
  if (isAtDoor && touch === 'signed-out') return <KeepInStep />;
  return (
    <>
      <span className="line" role="status" data-touch={touch} data-heard={clock > 0}>
        <Glyph name={touch === 'in-step' ? 'online' : 'offline'} size={18} />
        {touch === 'in-step' ? (
          'In step'
        ) : touch === 'signed-out' ? (
          <span className="lost">
            Signed out. <a href="/sign-in">Sign in to go on</a>
          </span>
        ) : (
          <span className="lost">
            Out of touch since {timeOf(since ?? Date.now())}; <span>what you see is of then</span>
          </span>
        )}
      </span>
      <KeepInStep />
    </>
  );
}
