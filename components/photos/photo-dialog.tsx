'use client';

import { useId } from 'react';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { photoHref } from '@/lib/wire/photos';
import type { PhotoRef } from '@/lib/wire/views/photo';
import { Picture } from './picture';

interface PhotoDialogProps {
  readonly photos: readonly PhotoRef[];
  /** Which of them; null = closed. */
  readonly shown: number | null;
  readonly onShow: (index: number | null) => void;
}

/** One photograph in full, with what it shows, who took it, and its fingerprint. */
export function PhotoDialog({ photos, shown, onShow }: PhotoDialogProps) {
  const heading = useId();
  const photo = shown === null ? undefined : photos[shown];
  const at = shown ?? 0;
  return (
    <Dialog
      open={photo !== undefined}
      onClose={() => onShow(null)}
      labelledBy={heading}
      className="photodialog"
    >
      {photo === undefined ? null : (
        <>
          <header>
            <h2 id={heading}>{photo.shows}</h2>
            {photos.length === 1 ? null : (
              <span className="dim num">
                {at + 1} of {photos.length}
              </span>
            )}
          </header>
          <div className="in">
            <Picture key={photo.hash} photo={photo} />
            <p>
              <b>{photo.taken}</b>
            </p>
            <p className="small dim">
              The shop’s copy. The original stayed on the device; its fingerprint begins with{' '}
              <span className="num">{photo.hash.slice(0, 12)}</span>.
            </p>
            <p className="acts">
              <Button data-first onClick={() => onShow(null)}>
                Close
              </Button>
              {photos.length === 1 ? null : (
                <>
                  <Button held={at === 0} onClick={() => onShow(at - 1)}>
                    One before
                  </Button>
                  <Button held={at === photos.length - 1} onClick={() => onShow(at + 1)}>
                    Next
                  </Button>
                </>
              )}
              <a className="btn" href={photoHref(photo.hash)} target="_blank" rel="noreferrer">
                On a page of its own
              </a>
            </p>
          </div>
        </>
      )}
    </Dialog>
  );
}
