'use client';

import { useState } from 'react';
import { PhotoStrip } from '@/components/photos/photo-strip';
import { TakePhotos } from '@/components/photos/take-photos';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Field } from '@/components/ui/field';
import { photoDrafts } from '@/lib/offline/photo-drafts';
import { MOST_PHOTOS } from '@/lib/wire/photos';
import type { DonorPartLine } from '@/lib/wire/views/donor';

interface PartDialogProps {
  readonly car: string;
  /** Whose photographs wait on this device. */
  readonly me: string;
  readonly part: DonorPartLine;
  readonly onClose: () => void;
}

/** Where it lies, its number, how it was found, and pictures of it. */
export function MoreDialog({ car, me, part, onClose }: PartDialogProps) {
  const sending = useSending();
  const [place, setPlace] = useState(part.place);
  const [serial, setSerial] = useState(part.serial);
  const [note, setNote] = useState(part.note);
  const [shots, setShots] = useState<{ readonly kept: readonly string[]; readonly unsent: number }>({
    kept: [],
    unsent: 0,
  });
  const waiting = { person: me, car, act: `grade-parts ${part.key}` };
  const photos = shots.kept;
  return (
    <AskDialog
      title={`${part.name} (${part.key})`}
      act="Keep it"
      isBusy={sending.isBusy || shots.unsent > 0}
      said={
        <>
          {shots.unsent === 0 ? null : (
            <p className="small">A photograph is not kept yet: wait for it, or take it off.</p>
          )}
          <AnswerLines sending={sending} done="Kept." />
        </>
      }
      onAct={() =>
        void sending.send(
          {
            type: 'grade-parts',
            car,
            parts: [{ part: part.key, place, serial, note }],
            ...(photos.length === 0 ? {} : { photos }),
          },
          `${part.name}: place, number and remark are kept.`,
          () => {
            void photoDrafts.given(waiting, photos).catch(() => undefined);
            onClose();
          },
        )
      }
      onClose={onClose}
    >
      <Field
        label="Where it lies"
        value={place}
        maxLength={60}
        data-first
        autoComplete="off"
        onChange={(event) => setPlace(event.target.value)}
      />
      <Field
        label="Number on it"
        value={serial}
        maxLength={60}
        autoComplete="off"
        onChange={(event) => setSerial(event.target.value)}
      />
      <Field
        label="How it was found"
        hint={part.lookedAt === '' ? undefined : `look at: ${part.lookedAt}`}
        value={note}
        maxLength={300}
        autoComplete="off"
        onChange={(event) => setNote(event.target.value)}
      />
      <PhotoStrip photos={part.photos} />
      <TakePhotos
        place={waiting}
        label="Photographs, if they help"
        most={MOST_PHOTOS}
        onTell={(kept, unsent) => setShots({ kept, unsent })}
      />
    </AskDialog>
  );
}
