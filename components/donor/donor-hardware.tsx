'use client';

import Link from 'next/link';
import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Button } from '@/components/ui/button';
import { Field, SelectField } from '@/components/ui/field';
import { Glyph } from '@/components/ui/glyph';
import type { DonorLot, DonorView } from '@/lib/wire/views/donor';

/** Hardware that came off with the parts: what is good is put aside for this car, and not bought. */
export function DonorHardwareSheet({ view }: { readonly view: DonorView }) {
  const { car, me, hardware } = view;
  const [asked, setAsked] = useState<'keep' | DonorLot | null>(null);
  return (
    <section className="sheet" aria-labelledby="donor-hardware">
      <header>
        <h2 id="donor-hardware">Hardware off it</h2>
        {hardware.items.length === 0 ? null : <Button onClick={() => setAsked('keep')}>Keep some</Button>}
      </header>
      {hardware.lots.length === 0 ? (
        <p className="idle dim">None that is good to use again was put aside.</p>
      ) : (
        <ul className="asidelist">
          {hardware.lots.map((lot) => (
            <li key={lot.lot}>
              <Glyph name={lot.keptApart === '' ? 'passed' : 'hold'} size={20} />
              <span>
                <Link href={`/stock/lots/${encodeURIComponent(lot.lot)}`} prefetch={false}>
                  <b>{lot.name}</b>
                  <span className="small dim">
                    {' '}
                    <span className="nb">{lot.lot}</span>: {lot.says};{' '}
                    {lot.isShared ? 'for any car' : 'for this car alone'}
                    {lot.keptApart === '' ? '' : `; kept apart: ${lot.keptApart}`}
                  </span>
                </Link>
                {me.isLead && !lot.isShared ? (
                  <Button onClick={() => setAsked(lot)}>
                    Share it<span className="vh">: {lot.lot}</span>
                  </Button>
                ) : null}
              </span>
            </li>
          ))}
        </ul>
      )}
      {asked === null ? null : asked === 'keep' ? (
        <KeepDialog view={view} onClose={() => setAsked(null)} />
      ) : (
        <ShareDialog chassis={car.chassis} lot={asked} onClose={() => setAsked(null)} />
      )}
    </section>
  );
}

function KeepDialog({ view, onClose }: { readonly view: DonorView; readonly onClose: () => void }) {
  const { car, hardware } = view;
  const sending = useSending();
  const [item, setItem] = useState(hardware.items[0]?.key ?? '');
  const [good, setGood] = useState('');
  const [scrapped, setScrapped] = useState('');
  const [bin, setBin] = useState('');
  const named = hardware.items.find(({ key }) => key === item);
  /** What it is called on its bag: the page is made anew with it. */
  const last = hardware.lots.findLast((lot) => lot.item === item);
  return (
    <AskDialog
      title="Good to use again"
      act="Put it aside"
      isBusy={sending.isBusy}
      said={
        <AnswerLines
          sending={sending}
          done={good === '' && last !== undefined ? `Put aside as ${last.lot}: tag the bag so.` : 'Noted.'}
        />
      }
      onAct={() =>
        void sending.send(
          {
            type: 'keep-donor-hardware',
            donorOf: car.id,
            lines: [
              {
                item,
                good: good.trim() === '' ? '0' : good.trim(),
                ...(scrapped.trim() === '' ? {} : { scrapped: scrapped.trim() }),
                ...(bin.trim() === '' ? {} : { bin: bin.trim() }),
              },
            ],
          },
          `${named?.name ?? item}: put aside for ${car.chassis}.`,
          () => {
            setGood('');
            setScrapped('');
          },
        )
      }
      onClose={onClose}
    >
      <SelectField label="What" value={item} data-first onChange={(event) => setItem(event.target.value)}>
        {hardware.items.map(({ key, name, needed }) => (
          <option key={key} value={key}>
            {name} ({key}){needed === '' ? '' : `, ${needed} needed`}
          </option>
        ))}
      </SelectField>
      <Field
        label="Good"
        hint="cleaned and looked at: straight, threads whole, no necking, no rust under the head"
        value={good}
        inputMode="decimal"
        autoComplete="off"
        onChange={(event) => setGood(event.target.value)}
      />
      <Field
        label="Thrown away"
        value={scrapped}
        inputMode="decimal"
        autoComplete="off"
        onChange={(event) => setScrapped(event.target.value)}
      />
      <Field
        label="Bin"
        hint="number and letter, as 09C"
        value={bin}
        maxLength={6}
        autoComplete="off"
        onChange={(event) => setBin(event.target.value)}
      />
      <p className="small dim">
        What the plan tightens once is not offered: it is bought new. Tag the bag with the lot that stands
        here afterwards.
      </p>
    </AskDialog>
  );
}

interface ShareDialogProps {
  readonly chassis: string;
  readonly lot: DonorLot;
  readonly onClose: () => void;
}

function ShareDialog({ chassis, lot, onClose }: ShareDialogProps) {
  const sending = useSending();
  return (
    <AskDialog
      title={`Share lot ${lot.lot}`}
      act="Any car may have it"
      isBusy={sending.isBusy}
      said={<AnswerLines sending={sending} done="Shared." />}
      onAct={() =>
        void sending.send(
          { type: 'share-donor-lot', lot: lot.lot },
          `Any car may have lot ${lot.lot} from now on.`,
          onClose,
        )
      }
      onClose={onClose}
    >
      <p>
        <b>{lot.name}</b>: {lot.says}. It is put aside for {chassis}. Shared, the car that needs it first gets
        it; that can’t be taken back.
      </p>
    </AskDialog>
  );
}
