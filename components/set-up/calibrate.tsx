'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import type { SetUpTool } from '@/lib/wire/views/set-up';
import { AnswerLines } from './answer-lines';
import { CalibrationFields, calibrationOf, NO_CALIBRATION } from './calibration-fields';
import { useSending } from './use-sending';

interface CalibrateProps {
  readonly tool: SetUpTool;
  readonly today: string;
}

interface Reading {
  readonly set: string;
  readonly delivered: string;
}

const NUMBER = {
  inputMode: 'decimal',
  pattern: '\\s*\\d+(\\.\\d+)?\\s*',
  title: 'a number, like 60',
} as const;
const NO_READINGS: readonly Reading[] = [
  { set: '', delivered: '' },
  { set: '', delivered: '' },
  { set: '', delivered: '' },
];

/** A certificate on record: when, until when, and how the bench found it, which settles what stands in doubt by it. */
export function Calibrate({ tool, today }: CalibrateProps) {
  const sending = useSending();
  const [calibration, setCalibration] = useState({ ...NO_CALIBRATION, on: today });
  const [uncertainty, setUncertainty] = useState('');
  const [tolerance, setTolerance] = useState('');
  const [readings, setReadings] = useState(NO_READINGS);
  const found = readings
    .map(({ set, delivered }) => ({ set: set.trim(), delivered: delivered.trim() }))
    .filter(({ set, delivered }) => set !== '' || delivered !== '');
  const write = (at: number, part: Partial<Reading>): void =>
    setReadings(readings.map((each, index) => (index === at ? { ...each, ...part } : each)));

  const record = (): Promise<void> =>
    sending.send(
      {
        type: 'record-calibration',
        tool: tool.id,
        ...calibrationOf(calibration),
        ...(found.length === 0 ? {} : { asFound: found }),
        ...(uncertainty.trim() === '' ? {} : { uncertainty: uncertainty.trim() }),
        ...(tolerance.trim() === '' ? {} : { tolerance: tolerance.trim() }),
      },
      `${tool.id} is calibrated until ${calibration.due}.`,
      () => {
        setCalibration({ ...NO_CALIBRATION, on: today });
        setReadings(NO_READINGS);
      },
    );

  return (
    <form
      className="sheet form"
      aria-labelledby="calibrate"
      onSubmit={(event) => {
        event.preventDefault();
        void record();
      }}
    >
      <header>
        <h2 id="calibrate">Record a calibration</h2>
        <span className="dim">from its certificate</span>
      </header>
      <div className="body">
        <CalibrationFields
          draft={calibration}
          onChange={setCalibration}
          mayBeNone={false}
          faultOf={sending.faultOf}
        />
        <p className="small dim">
          As found, before it was set right: what it was set to, and what it gave. It says how far what was
          signed with it may be off. Left empty, what stands in doubt stays in doubt.
        </p>
        {readings.map((reading, at) => (
          <div className="two" key={at}>
            <Field
              label={<ReadingLabel nr={at + 1} says="set to" unit={tool.unit} />}
              value={reading.set}
              onChange={(event) => write(at, { set: event.target.value })}
              required={reading.delivered.trim() !== ''}
              {...NUMBER}
            />
            <Field
              label={<ReadingLabel nr={at + 1} says="it gave" unit={tool.unit} />}
              value={reading.delivered}
              onChange={(event) => write(at, { delivered: event.target.value })}
              required={reading.set.trim() !== ''}
              {...NUMBER}
            />
          </div>
        ))}
        <div className="two">
          <Field
            label="Uncertainty, %"
            hint="from the certificate; empty: none"
            value={uncertainty}
            onChange={(event) => setUncertainty(event.target.value)}
            error={sending.faultOf('uncertainty')}
            {...NUMBER}
          />
          <Field
            label="Tolerance, %"
            hint="how far off is still good; empty: 4"
            value={tolerance}
            onChange={(event) => setTolerance(event.target.value)}
            error={sending.faultOf('tolerance')}
            {...NUMBER}
          />
        </div>
        <AnswerLines sending={sending} done="The calibration is on record." />
        <div className="acts">
          <Button kind="main" type="submit" held={sending.isBusy}>
            Record the calibration
          </Button>
        </div>
      </div>
    </form>
  );
}

interface ReadingLabelProps {
  readonly nr: number;
  readonly says: string;
  readonly unit: string;
}

/** A unit keeps its own letters where a label is set in capitals. */
function ReadingLabel({ nr, says, unit }: ReadingLabelProps) {
  return (
    <>
      Reading {nr}: {says}, <span className="un">{unit}</span>
    </>
  );
}
