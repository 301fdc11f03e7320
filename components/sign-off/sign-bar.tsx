import { Glyph } from '@/components/ui/glyph';
import type { ReactNode } from 'react';

interface SignBarProps {
  readonly says: string;
  /** Why not yet, or whose PIN it asks. */
  readonly why: string;
  readonly isHeld: boolean;
  readonly onSign: () => void;
  /** Who verifies then, and other ways to go. */
  readonly children?: ReactNode;
}

/** Well away from the keys, so that no figure signs. */
export function SignBar({ says, why, isHeld, onSign, children }: SignBarProps) {
  return (
    <div className="so-sign">
      <button
        className={isHeld ? 'so-signkey' : 'so-signkey live'}
        type="button"
        aria-disabled={isHeld || undefined}
        onClick={() => {
          if (!isHeld) onSign();
        }}
      >
        <span>{says}</span>
        <small>{why}</small>
      </button>
      {children}
    </div>
  );
}

/** What comes after: who may verify, so that they can be called while the nut is still warm. */
export function ThenVerified({ names, all }: { readonly names: string; readonly all: string }) {
  return (
    <div className="so-second">
      <Glyph name="verified" size={32} />
      <span>
        <b>Then a second person verifies</b>
        <br />
        <span className="small dim">{names === '' ? `Nobody else may: ${all}` : names}</span>
      </span>
    </div>
  );
}
