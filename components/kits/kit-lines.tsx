import { BinCell } from '@/components/stock/bin-cell';
import { Glyph } from '@/components/ui/glyph';
import type { KitPickLine } from '@/lib/wire/views/kits';

interface KitLinesProps {
  readonly lines: readonly KitPickLine[];
  /** The one that is being picked. */
  readonly now: string | null;
  readonly onChoose: (item: string) => void;
}

/** The whole kit: a tick where it is in the box, a word where it is short. */
export function KitLines({ lines, now, onChoose }: KitLinesProps) {
  return (
    <ol className="kitlines sheet" aria-label="All lines of the kit">
      {lines.map((line) => {
        const { item, name, bin, wanted, isPicked, report, lacks, over } = line;
        const isHere = item === now;
        return (
          <li key={item} className={`${isHere ? 'here' : ''} ${isPicked ? 'in' : ''}`.trim()}>
            <button type="button" aria-current={isHere ? 'step' : undefined} onClick={() => onChoose(item)}>
              <BinCell bin={bin} />
              <span className="q num">{wanted} ×</span>
              <span className="t">
                {name}
                {report === '' ? null : <span className="small stop">{report}</span>}
                {lacks === '' || isPicked ? null : <span className="small stop">{lacks}</span>}
                {over === '' ? null : <span className="small">{over} more in the box than it takes</span>}
              </span>
              <span className="end small">
                {isPicked ? (
                  <>
                    <Glyph name="passed" size={20} />
                    <span className="vh">in the box</span>
                  </>
                ) : isHere ? (
                  'here'
                ) : (
                  partly(line)
                )}
              </span>
            </button>
          </li>
        );
      })}
    </ol>
  );
}

const partly = ({ inBox, left }: KitPickLine): string => (inBox === '0' ? '' : `${left} short`);
