'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import type { PhotoRef } from '@/lib/wire/views/photo';
import { PhotoStrip } from './photo-strip';
import { WaitingPhotos } from './waiting-photos';

/** A browser asks for each picture: as many as one looks at, then the rest. */
const AT_FIRST = 12;

interface PhotoSheetProps {
  readonly photos: readonly PhotoRef[];
  readonly person: string;
  readonly car: string;
  readonly version: number;
}

/** All photographs of a car, the newest first, whether or not what they show still asks for anything. */
export function PhotoSheet({ photos, person, car, version }: PhotoSheetProps) {
  const [isAll, setAll] = useState(false);
  const shown = isAll ? photos : photos.slice(0, AT_FIRST);
  return (
    <section className="sheet photosheet" aria-labelledby="photographs">
      <header>
        <h2 id="photographs">Photographs</h2>
        <span className="dim says">
          {photos.length === 0 ? '' : `${String(photos.length)}, the newest first`}
        </span>
      </header>
      <WaitingPhotos person={person} car={car} version={version} />
      {photos.length === 0 ? (
        <p className="idle dim">
          None yet. They are taken with a finding, a check, a remark, a joint’s signature, and when work is
          left or finished.
        </p>
      ) : null}
      <PhotoStrip photos={shown} />
      {shown.length === photos.length ? null : (
        <p className="more">
          <Button onClick={() => setAll(true)}>All {photos.length}</Button>
        </p>
      )}
    </section>
  );
}
