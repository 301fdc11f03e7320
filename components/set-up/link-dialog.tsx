'use client';

import { useRouter } from 'next/navigation';
import { useId, useState } from 'react';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { Field } from '@/components/ui/field';
import { announce } from '@/components/ui/live-region';
import type { LinkAnswer } from '@/lib/wire/set-up';
import type { SetUpPerson } from '@/lib/wire/views/set-up';
import { ask } from './ask';
import { Wrong } from './wrong';

interface PersonDialogProps {
  readonly person: Pick<SetUpPerson, 'id' | 'name'>;
  readonly onClose: () => void;
}

/** A link that the person opens to set what only they know. It is shown once and kept nowhere. */
export function LinkDialog({ person, onClose }: PersonDialogProps) {
  const heading = useId();
  const router = useRouter();
  const [answer, setAnswer] = useState<LinkAnswer | null>(null);
  const [isBusy, setBusy] = useState(false);

  const make = async (): Promise<void> => {
    setBusy(true);
    setAnswer(await ask<LinkAnswer>('/api/set-up/enrolments', { person: person.id }));
    setBusy(false);
    router.refresh();
  };

  const copy = async (link: string): Promise<void> => {
    await navigator.clipboard.writeText(link);
    announce('The link is copied.');
  };

  return (
    <Dialog open onClose={onClose} labelledBy={heading}>
      <header>
        <h2 id={heading}>A link for {person.name}</h2>
      </header>
      <div className="in">
        {answer?.outcome === 'made' ? (
          <>
            <Field
              label="The link"
              hint={`Good once, until ${answer.until}. It is not shown again.`}
              value={answer.link}
              readOnly
              onFocus={(event) => event.target.select()}
            />
            <div className="acts">
              {/* Over plain http in a shop’s own network a browser has no clipboard for pages. */}
              {'clipboard' in navigator ? (
                <Button kind="main" onClick={() => void copy(answer.link)}>
                  Copy
                </Button>
              ) : null}
              <Button onClick={onClose}>Close</Button>
            </div>
          </>
        ) : (
          <>
            <p>
              {person.name} opens it on a device of the shop and sets what nobody else knows. An earlier link
              that was not used is void; setting a new PIN signs {person.name} out everywhere.
            </p>
            <Wrong says={answer?.says ?? null} />
            <div className="acts">
              <Button kind="main" onClick={() => void make()} held={isBusy}>
                Make the link
              </Button>
              <Button kind="quiet" onClick={onClose}>
                Not now
              </Button>
            </div>
          </>
        )}
      </div>
    </Dialog>
  );
}
