'use client';

import { useState } from 'react';
import { Glyph } from '@/components/ui/glyph';
import { photoHref } from '@/lib/wire/photos';
import type { PhotoRef } from '@/lib/wire/views/photo';

interface PictureProps {
  readonly photo: PhotoRef;
  /** Inside a button that says what it shows. */
  readonly isSmall?: boolean;
}

/** The kept copy; where it does not come, words stand in its place. */
export function Picture({ photo, isSmall = false }: PictureProps) {
  const [isGone, setGone] = useState(false);
  if (isGone)
    return (
      <span className="gone">
        <Glyph name="photo" size={isSmall ? 20 : 32} />
        <span className={isSmall ? 'vh' : ''}>
          The picture does not come. When the line is back, load the page again.
        </span>
      </span>
    );
  return (
    <img
      src={photoHref(photo.hash)}
      alt={isSmall ? '' : photo.shows}
      loading={isSmall ? 'lazy' : 'eager'}
      decoding="async"
      onError={() => setGone(true)}
    />
  );
}
