import { Glyph } from '@/components/ui/glyph';

interface TapPadProps {
  /** `Pass 1 of 3`. */
  readonly label: string;
  /** `Nut 3`. */
  readonly big: string;
  /** `clicked`, `brought there`. */
  readonly does: string;
  readonly isHeld: boolean;
  readonly onTap: () => void;
}

/** One tap for each fastener, as large as the pad: nothing to read and nothing to type. */
export function TapPad({ label, big, does, isHeld, onTap }: TapPadProps) {
  return (
    <>
      <p className="so-entry so-tapsay">
        <span className="label">{label}</span>
      </p>
      <button
        className="so-tap"
        type="button"
        aria-disabled={isHeld || undefined}
        onClick={() => {
          if (!isHeld) onTap();
        }}
      >
        <b>{big}</b>
        <span>
          {does} <Glyph name="arrow" />
        </span>
      </button>
    </>
  );
}
