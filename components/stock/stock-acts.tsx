'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import type { StockPlaceView } from '@/lib/wire/views/stock';
import { CountDialog } from './count-dialog';
import { placeName } from './place-name';
import { PutAwayDialog } from './put-away-dialog';
import { PutBackDialog } from './put-back-dialog';
import { TakeOutDialog } from './take-out-dialog';

const ACTS = ['Count', 'Take out', 'Put back', 'Put away'] as const;
type Act = (typeof ACTS)[number];

const DIALOGS = {
  Count: CountDialog,
  'Take out': TakeOutDialog,
  'Put back': PutBackDialog,
  'Put away': PutAwayDialog,
} as const;

/** What anybody may do with what lies in one place. */
export function StockActs({ place }: { readonly place: StockPlaceView }) {
  const [open, setOpen] = useState<Act | null>(null);
  const Asking = open === null ? null : DIALOGS[open];
  return (
    <>
      {ACTS.map((act) => (
        <Button key={act} onClick={() => setOpen(act)}>
          {act}
          <span className="vh">: {placeName(place)}</span>
        </Button>
      ))}
      {Asking === null ? null : <Asking place={place} onClose={() => setOpen(null)} />}
    </>
  );
}
