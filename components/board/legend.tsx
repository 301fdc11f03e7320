import { Glyph, RailHead } from '@/components/ui/glyph';
import type { GlyphName } from '@/components/ui/glyph';

const SIGNS: readonly (readonly [GlyphName, string])[] = [
  ['open', 'open'],
  ['snug', 'snug'],
  ['final', 'final'],
  ['verified', 'verified'],
  ['disturbed', 'disturbed'],
  ['passed', 'check'],
];

/** What the heads and boxes mean: a sign never stands alone the first time. */
export function Legend() {
  return (
    <ul className="legend" aria-label="What the bolt heads mean">
      {SIGNS.map(([sign, says]) => (
        <li key={sign}>
          <Glyph name={sign} size={20} /> {says}
        </li>
      ))}
      <li>
        <RailHead sign="lateopen" />
        <RailHead sign="latedisturbed" /> in a stage behind
      </li>
      <li className="pale">
        <RailHead sign="snug" /> pale: ahead of the stage
      </li>
      <li className="edge">
        <i aria-hidden="true" /> not all is settled in a stage behind
      </li>
    </ul>
  );
}
