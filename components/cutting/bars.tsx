// Sent as data and drawn in one go: React sends a drawing in pieces under inline styles, which the page refuses.
'use client';

import type { ReactNode } from 'react';
import { CarTag, chipOf } from '@/components/shop/plate';
import { Glyph } from '@/components/ui/glyph';
import type { CutDrawing, DrawnBar, DrawnPiece } from '@/lib/wire/views/cutting';

const HEIGHT = 54;
const BAND = 7;

interface CutBarsProps {
  readonly drawing: CutDrawing;
  /** What is cut. */
  readonly name: string;
  readonly sawn: ReadonlySet<number>;
  /** Under each bar, by its place in the drawing. */
  readonly acts: (index: number) => ReactNode;
}

/** Every bar to scale, one below the other under one rule; on a narrow screen they are pushed aside together. */
export function CutBars({ drawing: { verdict, bars, ticks }, name, sawn, acts }: CutBarsProps) {
  const cars = new Set(bars.flatMap((bar) => bar.cars.map(({ car }) => car.id)));
  return (
    <>
      <p className="verdict">
        <Glyph name={verdict.isProved ? 'passed' : 'due'} size={20} />{' '}
        <span>
          <b>{verdict.says}</b> {verdict.why}
        </span>
      </p>
      {bars.length === 0 ? null : (
        <div className="rack" role="group" aria-label={`${name}, bar by bar`} tabIndex={0}>
          <div className="bar" aria-hidden="true">
            <span />
            <svg className="ticks" width="100%" height="20">
              <line x1="0" x2="100%" y1="19" y2="19" />
              {ticks.map(({ at, text }) => (
                <Tick key={text} at={at} text={text} />
              ))}
            </svg>
          </div>
          <ul>
            {bars.map((bar, index) => (
              <li key={index} className={sawn.has(index) ? 'bar sawn' : 'bar'}>
                <span className="lab">
                  <b>{bar.name}</b>
                  <span className="small dim num">{bar.length} mm</span>
                </span>
                <Bar bar={bar} />
                {cars.size < 2 ? null : (
                  <p className="for small">
                    {bar.cars.map(({ car, marks }) => (
                      <span key={car.id}>
                        <CarTag chassis={car.chassis} colour={car.colour} /> {marks}
                      </span>
                    ))}
                  </p>
                )}
                <div className="sawing">{acts(index)}</div>
              </li>
            ))}
          </ul>
        </div>
      )}
    </>
  );
}

/** The last one would lie beyond the edge, so it stands before its line. */
function Tick({ at, text }: { readonly at: number; readonly text: string }) {
  const isLast = at > 0.97;
  return (
    <>
      <line x1={share(at)} x2={share(at)} y1="12" y2="19" />
      <text x={share(at)} dx={isLast ? -4 : 4} y="14" textAnchor={isLast ? 'end' : 'start'}>
        {text === '0' ? '0 m' : text}
      </text>
    </>
  );
}

/** Placed by shares of the width, so that lengths stay true and letters keep their size, whatever the screen is. */
function Bar({ bar: { to, pieces, off, keep, says } }: { readonly bar: DrawnBar }) {
  return (
    <svg className="stock" width="100%" height={HEIGHT} role="img" aria-label={says}>
      <rect className="outline" x="0" y="1" width={share(to)} height={HEIGHT - 2} />
      {off.map((each, index) => (
        <rect
          key={index}
          className="off"
          fill="url(#cut-off)"
          x={share(each.from)}
          y="1"
          width={share(each.to - each.from)}
          height={HEIGHT - 2}
        />
      ))}
      {keep === null ? null : (
        <>
          <rect
            className="keep"
            x={share(keep.from)}
            y="1"
            width={share(keep.to - keep.from)}
            height={HEIGHT - 2}
          />
          <text className="kept" x={share((keep.from + keep.to) / 2)} y="32" textAnchor="middle">
            {keep.to - keep.from < ROOM_FOR_KEEP ? keep.length : `keep ${keep.length}`}
          </text>
        </>
      )}
      {pieces.map((piece, index) => (
        <Piece key={index} piece={piece} />
      ))}
    </svg>
  );
}

/** Shares of the width that letters need where the bar is drawn smallest. */
const ROOM_FOR_MARK = 0.011;
const ROOM_FOR_FIGURE = 0.0085;
const ROOM_FOR_KEEP = 0.09;

function Piece({ piece: { mark, length, colour, from, to } }: { readonly piece: DrawnPiece }) {
  const width = to - from;
  const middle = share((from + to) / 2);
  const hasLength = width >= ROOM_FOR_FIGURE * length.length;
  return (
    <>
      <rect className="piece" x={share(from)} y="1" width={share(width)} height={HEIGHT - 2} />
      <rect
        className={`band ${chipOf(colour)}`}
        x={share(from)}
        y={HEIGHT - 1 - BAND}
        width={share(width)}
        height={BAND}
      />
      {width < ROOM_FOR_MARK ? null : (
        <text className="mark" x={middle} y={hasLength ? 22 : 30} textAnchor="middle">
          {mark}
        </text>
      )}
      {hasLength ? (
        <text x={middle} y="39" textAnchor="middle">
          {length}
        </text>
      ) : null}
    </>
  );
}

const share = (part: number): string => `${(part * 100).toFixed(3)}%`;

/** The hatching of what is cut away: drawn once on the page, used by every bar. */
export function CutOffPattern() {
  return (
    <svg className="vh" aria-hidden="true">
      <defs>
        <pattern
          id="cut-off"
          width="6"
          height="6"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <rect className="ground" width="6" height="6" />
          <line x1="0" y1="0" x2="0" y2="6" />
        </pattern>
      </defs>
    </svg>
  );
}
