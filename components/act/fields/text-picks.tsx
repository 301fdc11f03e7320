interface TextPicksProps {
  readonly picks: readonly string[];
  readonly value: string;
  readonly onPick: (text: string) => void;
}

/** What is usually said, by one tap; anything else is written. */
export function TextPicks({ picks, value, onPick }: TextPicksProps) {
  return (
    <p className="picks">
      {picks.map((pick) => (
        <button key={pick} type="button" aria-pressed={value === pick} onClick={() => onPick(pick)}>
          {pick}
        </button>
      ))}
    </p>
  );
}
