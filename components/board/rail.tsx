import { memo } from 'react';
import { RailHead } from '@/components/ui/glyph';
import { RAIL_CODES } from '@/lib/wire/views/board';
import { railRuns } from './rail-runs';

/** The heads and boxes of one stage. The cell says the same in words. */
export const Rail = memo(function Rail({ rail }: { readonly rail: string }) {
  return (
    <span className="rail" aria-hidden="true">
      {railRuns(rail).map(({ code, count, folded }) =>
        folded ? (
          <span key={code} className="fold">
            <RailHead sign={RAIL_CODES[code]} />
            {count}
          </span>
        ) : (
          Array.from({ length: count }, (_, at) => <RailHead key={`${code}${at}`} sign={RAIL_CODES[code]} />)
        ),
      )}
    </span>
  );
});
