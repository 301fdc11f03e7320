import { Glyph } from '@/components/ui/glyph';

interface GatePostProps {
  readonly chassis: string;
  /** Number of the stage that it ends. */
  readonly gate: number;
  /** How many things keep it closed. */
  readonly count: number;
  /** Somebody has just tried to pass. */
  readonly isRefusing: boolean;
  readonly isOpen: boolean;
  readonly onPress: () => void;
}

/** The gate before the car. Closed, it is barred and shows the count of what closes it; the count opens the list. */
export function GatePost({ chassis, gate, count, isRefusing, isOpen, onPress }: GatePostProps) {
  if (count === 0 && !isRefusing)
    return (
      <span className="post ready">
        <Glyph name="gopen" size={18} label={`Gate ${gate} is open for ${chassis}`} />
      </span>
    );
  return (
    <button
      type="button"
      className={`post shut${isRefusing ? ' held' : ''}`}
      aria-expanded={isOpen}
      aria-label={`${count} hold gate ${gate} of ${chassis} closed`}
      onClick={onPress}
    >
      <i aria-hidden="true" />
      <b aria-hidden="true">{count}</b>
    </button>
  );
}
