import { RailHead } from '@/components/ui/glyph';
import './board.css';

/** Still, with hatching for what is being read: nothing shimmers. */
export function BoardWaiting() {
  return (
    <>
      <div className="pagetop" aria-busy="true">
        <div>
          <h1>Track board</h1>
          <p className="dim" role="status">
            The cars are being read.
          </p>
        </div>
      </div>
      <div className="sheet waiting" aria-hidden="true">
        {[1, 2, 3].map((row) => (
          <div key={row}>
            <span className="hatch" />
            <span className="rail">
              {Array.from({ length: 14 }, (_, at) => (
                <RailHead key={at} sign="open" />
              ))}
            </span>
          </div>
        ))}
      </div>
    </>
  );
}
