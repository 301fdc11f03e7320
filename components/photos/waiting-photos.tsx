'use client';

import Link from 'next/link';
import { useEffect, useState } from 'react';
import { Button } from '@/components/ui/button';
import { Glyph } from '@/components/ui/glyph';
import { announce } from '@/components/ui/live-region';
import { photoDrafts } from '@/lib/offline/photo-drafts';
import type { PhotoDraft } from '@/lib/offline/photo-drafts';
import { clockTime } from './clock-time';

interface WaitingPhotosProps {
  readonly person: string;
  readonly car: string;
  /** Whether the page was made anew: an act may have taken them with it. */
  readonly version: number;
}

/** What an act is called where its photographs are asked for. */
const WORDS: Readonly<Record<string, string>> = {
  'report-finding': 'Finding',
  'report-disturbed': 'Stripe broken',
  'fail-check': 'Check fails',
  'pass-check': 'Check passes',
  'pause-operation': 'Pause',
  'finish-operation': 'Finish',
  'add-note': 'Remark',
  'grade-parts': 'Part of the donor',
  'add-photo': 'Photograph that the plan asks for',
  'snug-joint': 'Run up snug',
  'verify-joint': 'Verify',
  'recheck-joint': 'Nothing moved',
  'reject-joint': 'Reject',
  joint: 'Sign-off sheet',
};

/** What this person took on this device for acts that were not given yet: a form that is shut would hide it. */
export function WaitingPhotos({ person, car, version }: WaitingPhotosProps) {
  const [found, setFound] = useState<readonly PhotoDraft[]>([]);
  useEffect(() => {
    let isGone = false;
    void photoDrafts.waiting(person, car).then(
      (list) => {
        if (!isGone) setFound(list);
      },
      () => undefined,
    );
    return () => {
      isGone = true;
    };
  }, [person, car, version]);
  if (found.length === 0) return null;
  const acts = [...new Set(found.map(({ place }) => place.act))].map(
    (act) => [act, found.filter(({ place }) => place.act === act)] as const,
  );
  return (
    <div className="waitingphotos">
      <p>
        <Glyph name="photo" size={20} /> <b>Taken on this device, and not given yet</b>
      </p>
      <ul>
        {acts.map(([act, photos]) => (
          <li key={act}>
            <span>
              <ActWords car={car} act={act} />: {photos.length === 1 ? 'one' : photos.length}, taken{' '}
              {clockTime(photos[0]?.takenAt ?? '')}
            </span>
            <Button
              kind="quiet"
              onClick={() => {
                setFound((list) => list.filter(({ place }) => place.act !== act));
                announce('Thrown away.');
                void photoDrafts.clear({ person, car, act }).catch(() => undefined);
              }}
            >
              Throw away
            </Button>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** `Finding`, `Finish AX-030`, and for a joint the way to its sheet. */
function ActWords({ car, act }: { readonly car: string; readonly act: string }) {
  const [type = '', key = ''] = act.split(' ');
  const word = WORDS[type] ?? type;
  if (type !== 'joint') return key === '' || key === car ? word : `${word} ${key}`;
  return (
    <Link href={`/cars/${encodeURIComponent(car)}/joints/${encodeURIComponent(key)}`} prefetch={false}>
      {word} {key}
    </Link>
  );
}
