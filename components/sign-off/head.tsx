import Link from 'next/link';
import type { MouseEvent } from 'react';
import { Chip } from '@/components/shop/plate';
import { Glyph } from '@/components/ui/glyph';
import type { GlyphName } from '@/components/ui/glyph';
import { LEVELS } from '@/lib/domain/base/vocabulary';
import type { SignOffView } from '@/lib/wire/views/sign-off';

interface HeadProps {
  readonly view: SignOffView;
  readonly onLeave: (event: MouseEvent<HTMLAnchorElement>) => void;
}

/** Which car, which joint, how far: the first thing to be sure of before a hand is put to it. */
export function Head({ view, onLeave }: HeadProps) {
  const { car, joint } = view;
  return (
    <header className="so-head">
      <Link
        className="so-back"
        href={carHref(view)}
        prefetch={false}
        aria-label={`Back to ${car.chassis}`}
        onClick={onLeave}
      >
        <Glyph name="arrow" />
      </Link>
      <div className="so-what">
        <h1>
          {joint.name}
          {joint.position === null ? null : <span>, {joint.position}</span>}
        </h1>
        <p className="small dim">
          {joint.critical ? <b className="so-critsmall">Critical · </b> : null}
          <span className="nb">joint {joint.key}</span>
          {joint.operation === null ? null : (
            <>
              {' · '}
              <span className="nb">{joint.operation.key}</span> {joint.operation.name}
            </>
          )}
          {joint.cycle > 1 ? <span className="nb"> · cycle {joint.cycle}</span> : null}
        </p>
      </div>
      {joint.critical ? (
        <span className="so-crit">
          <Glyph name="critical" size={32} />
          <span>
            <b>Critical</b>
            <br />
            {joint.who ?? 'second person'}
          </span>
        </span>
      ) : null}
      <States view={view} />
    </header>
  );
}

/** The car's paint across the whole screen: the wrong one of six like cars is seen from the corner of an eye. */
export function Band({ colour }: { readonly colour: string | null }) {
  return (
    <div className="so-band" aria-hidden="true">
      <Chip colour={colour} />
    </div>
  );
}

export const carHref = ({ car, joint }: SignOffView): string =>
  `/cars/${encodeURIComponent(car.id)}#joint:${joint.key}`;

/** Shapes carry it: empty, half, one stripe, two stripes; a doubt breaks the stripe. */
function States({ view }: { readonly view: SignOffView }) {
  const { level, opened, dueLevel } = view.joint;
  const at = LEVELS.indexOf(level);
  const isDoubted = view.doubts.length > 0 && (level === 'final' || level === 'verified');
  const wasMore = level === 'open' && opened !== null && opened.was !== 'open';
  // A joint that needs no second person ends at final.
  const shown = LEVELS.filter(
    (each) => each !== 'verified' || dueLevel === 'verified' || level === 'verified',
  );
  return (
    <ol className="so-states" aria-label={`Joint is ${level}${isDoubted ? ', in doubt' : ''}`}>
      {shown.map((each, index) => {
        const isNow = each === level;
        const sign: GlyphName = isNow && isDoubted ? 'disturbed' : each;
        return (
          <li
            key={each}
            className={isNow ? 'is' : index < at ? 'past' : ''}
            aria-current={isNow ? 'step' : undefined}
          >
            <Glyph name={sign} size={isNow ? 32 : 24} />
            <span>
              {isNow && isDoubted ? 'in doubt' : each}
              {isNow && wasMore ? <small> was {opened.was}</small> : null}
            </span>
          </li>
        );
      })}
    </ol>
  );
}
