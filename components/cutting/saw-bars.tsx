// Keeps what was read while it is sawn: a plan that moved under a hand at the saw would match no printed sheet.
'use client';

import { useState } from 'react';
import type { ReactNode } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Button } from '@/components/ui/button';
import { TextField } from '@/components/ui/field';
import { Glyph } from '@/components/ui/glyph';
import type { CutDrawing } from '@/lib/wire/views/cutting';
import { CutBars } from './bars';
import { withUnit } from './length';
import './sawing.css';

interface SawBarsProps {
  readonly item: string;
  readonly name: string;
  readonly drawing: CutDrawing;
}

const NONE: ReadonlySet<number> = new Set();

/** The plan of one item, and “sawn” for each bar of it or for all. */
export function SawBars({ item, name, drawing }: SawBarsProps) {
  const [kept, setKept] = useState<{ readonly drawing: CutDrawing; readonly sawn: ReadonlySet<number> }>();
  const [asked, setAsked] = useState<number | 'all' | null>(null);
  const sending = useSending();
  const shown = kept?.drawing ?? drawing;
  const sawn = kept?.sawn ?? NONE;
  const open = shown.bars.flatMap((_, index) => (sawn.has(index) ? [] : [index]));

  const saw = (indexes: readonly number[], left?: string): Promise<void> =>
    sending.send(
      {
        type: 'saw-bars',
        item,
        bars: indexes.flatMap((index) => {
          const bar = shown.bars[index];
          return bar === undefined ? [] : [{ ...bar.sawing, ...(left === undefined ? {} : { left }) }];
        }),
      },
      indexes.length === 1
        ? `${shown.bars[indexes[0] ?? 0]?.name ?? ''} of ${name} is sawn.`
        : `All bars of ${name} are sawn.`,
      () => {
        const all = new Set([...sawn, ...indexes]);
        setKept(all.size === shown.bars.length ? undefined : { drawing: shown, sawn: all });
        setAsked(null);
      },
    );

  return (
    <>
      <CutBars
        drawing={shown}
        name={name}
        sawn={sawn}
        acts={(index) => {
          const bar = shown.bars[index]?.name ?? '';
          return sawn.has(index) ? (
            <span className="small">
              <Glyph name="passed" size={20} /> sawn
            </span>
          ) : (
            <>
              <Button held={sending.isBusy} onClick={() => void saw([index])}>
                Sawn
                <span className="vh">
                  : {bar} of {name}
                </span>
              </Button>
              <Button
                kind="quiet"
                onClick={() => {
                  sending.clear();
                  setAsked(index);
                }}
              >
                Sawn, another rest
                <span className="vh">
                  : {bar} of {name}
                </span>
              </Button>
            </>
          );
        }}
      />
      <div className="sawall">
        {asked === null ? (
          <AnswerLines sending={sending} done="Sawn. What it was cut for stands below." />
        ) : null}
        {kept === undefined ? null : (
          <p>
            <span className="small dim">
              {sawn.size === 1 ? 'One bar is' : `${String(sawn.size)} bars are`} sawn; the others stand as you
              began with them.
            </span>{' '}
            <Button onClick={() => setKept(undefined)}>
              Plan what is left anew<span className="vh">: {name}</span>
            </Button>
          </p>
        )}
        {open.length < 2 ? null : (
          <Button
            onClick={() => {
              sending.clear();
              setAsked('all');
            }}
          >
            All {open.length} bars are sawn<span className="vh"> of {name}</span>
          </Button>
        )}
      </div>
      {asked === 'all' ? (
        <AskDialog
          title={`All bars of ${name}`}
          act={`All ${String(open.length)} are sawn`}
          isBusy={sending.isBusy}
          said={<AnswerLines sending={sending} done="" />}
          onAct={() => void saw(open)}
          onClose={() => setAsked(null)}
        >
          <ul className="sawlist">
            {open.map((index) => (
              <li key={index}>{shown.bars[index]?.says}</li>
            ))}
          </ul>
          <p className="small dim">Rests that are used leave the rack, and what is to be kept goes on it.</p>
        </AskDialog>
      ) : null}
      {typeof asked === 'number' ? (
        <LeftDialog
          key={asked}
          title={`${shown.bars[asked]?.name ?? ''} of ${name}`}
          reckoned={shown.bars[asked]?.keep?.length ?? ''}
          isBusy={sending.isBusy}
          said={<AnswerLines sending={sending} done="" />}
          onSawn={(left) => void saw([asked], left)}
          onClose={() => setAsked(null)}
        />
      ) : null}
    </>
  );
}

interface LeftDialogProps {
  readonly title: string;
  /** In millimetres; empty = nothing worth keeping. */
  readonly reckoned: string;
  readonly isBusy: boolean;
  readonly said: ReactNode;
  readonly onSawn: (left: string) => void;
  readonly onClose: () => void;
}

/** What is left of a bar, as it was measured and not as it was reckoned. */
function LeftDialog({ title, reckoned, isBusy, said, onSawn, onClose }: LeftDialogProps) {
  const [left, setLeft] = useState(reckoned.replaceAll(',', ''));
  return (
    <AskDialog
      title={title}
      act="Sawn"
      isBusy={isBusy}
      said={said}
      onAct={() => onSawn(withUnit(left))}
      onClose={onClose}
    >
      <TextField
        label="What is left and kept"
        hint={`in millimetres; nothing where it is thrown away. Reckoned: ${reckoned === '' ? 'nothing worth keeping' : `${reckoned} mm`}`}
        value={left}
        data-first
        onChange={(event) => setLeft(event.target.value)}
      />
    </AskDialog>
  );
}
