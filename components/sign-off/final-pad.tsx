'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { announce } from '@/components/ui/live-region';
import type { Unit } from '@/lib/domain/base/units';
import { newId } from '@/lib/offline/new-id';
import { asksOf } from './model/asks';
import type { Ask, ValueAsk } from './model/asks';
import { shownUnit } from './model/judge';
import type { Verdict } from './model/judge';
import { done, enter, sayUnit, takeBack, type } from './model/moves';
import { setOf } from './model/want';
import { askLabel, askUnit, fixed } from './model/words';
import { Pad } from './pad';
import { UnitDialog } from './small-dialogs';
import { TapPad } from './tap-pad';
import type { Sitting } from './model/sitting';
import type { Desk } from './use-desk';

interface FinalPadProps {
  readonly desk: Desk;
  readonly current: Ask | null;
  readonly isLocked: boolean;
}

/** The keys for what is done next: figures where there is something to read, one large tap where there is not. */
export function FinalPad({ desk, current, isLocked }: FinalPadProps) {
  const { view, now, bench } = desk;
  const { sitting } = now;
  const [said, setSaid] = useState<{ readonly text: string; readonly isWrong: boolean } | null>(null);
  const [units, setUnits] = useState<readonly Unit[] | null>(null);
  const [isOtherwise, setOtherwise] = useState(false);
  const isHeld = isLocked || current === null || !now.isReady;
  const unit = shownUnit(bench, sitting);

  const give = async (ask: ValueAsk, typed: Sitting): Promise<void> => {
    const entered = enter(bench, typed, ask, {
      id: newId(),
      doneAt: new Date().toISOString(),
      car: view.car.id,
    });
    if (entered.is === 'not-taken') {
      const { verdict } = entered;
      // What was said about the unit is kept, whatever came of the value.
      await now.change(() => typed);
      if (verdict.is === 'unit-doubtful') setUnits(verdict.units);
      else
        setSaid({
          text:
            verdict.is === 'beyond-tool'
              ? `${bench.tool?.id ?? 'The tool'} shows ${verdict.range}, not ${typed.typed}.`
              : 'That is no number.',
          isWrong: true,
        });
      return;
    }
    setSaid(null);
    // Typed wrong, it is typed again.
    if (entered.is === 'over' || entered.verdict.is === 'inside') setOtherwise(false);
    if (entered.is === 'taken' && entered.verdict.is !== 'inside')
      // Under is no fault: the wrench goes on.
      setSaid({ text: goOn(ask, entered.verdict, view.joint), isWrong: entered.verdict.is === 'above' });
    else
      announce(
        `${askLabel(ask, view.joint)} ${typed.typed}${entered.is === 'over' ? ', over. Stored.' : ', in band.'}`,
      );
    await now.change(() => entered.sitting);
  };

  const isTapped =
    current !== null &&
    (current.kind === 'tap' || isDoneStep(current, desk) || (current.kind === 'setting' && !isOtherwise));
  const back = takeBack(bench, sitting);
  const hasAsks = asksOf(view.joint, bench.tool?.kind ?? null).length > 0;
  return (
    <>
      {isTapped ? (
        <FinalTap
          desk={desk}
          ask={current}
          isHeld={isHeld}
          onGive={(text) => {
            if (current.kind === 'setting') void give(current, type(sitting, text));
            else void now.change((before) => done(before, current));
          }}
        />
      ) : (
        <Pad
          label={
            current === null ? (hasAsks ? 'All done' : 'Nothing to read yet') : askLabel(current, view.joint)
          }
          unit={current === null ? '' : askUnit(current, unit, view.joint)}
          value={sitting.over.at(-1)?.reading ?? sitting.typed}
          isHeld={isHeld}
          isStop={sitting.over.length > 0 || said?.isWrong === true}
          said={said}
          enterSays={current === null ? 'Enter' : nextSays(current, desk)}
          onValue={(text) => {
            setSaid(null);
            void now.change((before) => type(before, text));
          }}
          onEnter={() => {
            if (current !== null && current.kind !== 'tap') void give(current, sitting);
          }}
        />
      )}
      <div className="so-back-row">
        {current?.kind === 'setting' ? (
          <Button
            kind="quiet"
            onClick={() => {
              setOtherwise(!isOtherwise);
            }}
          >
            {isOtherwise ? 'As the sheet says' : 'It is set otherwise'}
          </Button>
        ) : null}
        <Button
          kind="quiet"
          held={isLocked || back === null}
          onClick={() => {
            setSaid(null);
            if (back !== null) void now.change(() => back);
          }}
        >
          Take back the last
        </Button>
      </div>
      {units === null || unit === null ? null : (
        <UnitDialog
          typed={sitting.typed}
          units={units}
          shown={unit}
          readBefore={Object.keys(sitting.given).filter((id) => !id.startsWith('tap:')).length}
          onClose={() => {
            setUnits(null);
            void now.change((before) => type(before, ''));
          }}
          onSay={(said) => {
            setUnits(null);
            if (current !== null && current.kind !== 'tap') void give(current, sayUnit(bench, sitting, said));
          }}
        />
      )}
    </>
  );
}

const isDoneStep = (ask: Ask, { view }: Desk): boolean =>
  ask.kind === 'step' && (view.joint.sequence[ask.index]?.window ?? null) === null;

/** Below the window it is no fault: the hand goes on. A setting or a step beyond it is put right. */
const goOn = (ask: Ask, verdict: Verdict, { word }: Desk['view']['joint']): string => {
  const by = 'by' in verdict && verdict.by !== null ? ` by ${fixed(verdict.by, 2)}` : '';
  if (verdict.is === 'below' && 'fastener' in ask)
    return `${word.one} ${String(ask.fastener)} is under${by}. Go on to the value.`;
  return ask.kind === 'setting'
    ? `That is ${verdict.is === 'above' ? 'too high' : 'too low'}${by}. Set it again.`
    : `That is outside its window${by}. Do that step again.`;
};

const nextSays = (ask: Ask, { view, bench, now }: Desk): string => {
  const left = asksOf(view.joint, bench.tool?.kind ?? null).filter(
    ({ id }) => now.sitting.given[id] === undefined,
  );
  const after = left.find(({ id }) => id !== ask.id);
  if (ask.kind === 'drag') return 'Drag taken';
  if (ask.kind === 'setting') return 'It is set';
  if (ask.kind === 'step') return 'Next step';
  return after === undefined || now.sitting.correcting !== null ? 'Enter' : `Next ${view.joint.word.one}`;
};

interface FinalTapProps {
  readonly desk: Desk;
  readonly ask: Ask;
  readonly isHeld: boolean;
  readonly onGive: (text: string) => void;
}

function FinalTap({ desk, ask, isHeld, onGive }: FinalTapProps) {
  const { view, bench, now } = desk;
  const set = setOf(bench, now.sitting, ask);
  if (ask.kind === 'setting')
    return (
      <TapPad
        label="First the setting, once"
        big={`${set?.big ?? ''} ${set?.unit ?? ''}`}
        does="It is set to this"
        isHeld={isHeld}
        onTap={() => {
          onGive(set?.big ?? '');
        }}
      />
    );
  const isPass = ask.kind === 'tap';
  return (
    <TapPad
      label={isPass ? `Pass ${String(ask.pass)} of ${String(view.joint.passes)}` : 'Next step'}
      big={askLabel(ask, view.joint)}
      does={isPass ? (bench.tool?.kind === 'click' ? 'has clicked' : 'is drawn up') : 'is done'}
      isHeld={isHeld}
      onTap={() => {
        onGive('done');
      }}
    />
  );
}
