'use client';

import { useState } from 'react';
import type { PhotoRef } from '@/lib/wire/views/photo';
import { Picture } from './picture';
import { PhotoDialog } from './photo-dialog';
import './photos.css';

/** Small pictures in a row; each opens in full. Nothing where there are none. */
export function PhotoStrip({ photos }: { readonly photos: readonly PhotoRef[] }) {
  const [shown, setShown] = useState<number | null>(null);
  if (photos.length === 0) return null;
  return (
    <>
      <ul className="photostrip" aria-label="Photographs">
        {photos.map((photo, index) => (
          // The same one may stand with two things.
          <li key={`${photo.hash} ${photo.shows}`}>
            <button type="button" onClick={() => setShown(index)} aria-label={`Open: ${photo.shows}`}>
              <Picture photo={photo} isSmall />
            </button>
          </li>
        ))}
      </ul>
      <PhotoDialog photos={photos} shown={shown} onShow={setShown} />
    </>
  );
}
