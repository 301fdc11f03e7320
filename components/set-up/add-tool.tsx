'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Field, SelectField } from '@/components/ui/field';
import type { Unit } from '@/lib/domain/base/units';
import { TOOL_KINDS } from '@/lib/domain/base/vocabulary';
import type { ToolKind } from '@/lib/domain/base/vocabulary';
import { AnswerLines } from './answer-lines';
import { CalibrationFields, calibrationOf, NO_CALIBRATION } from './calibration-fields';
import { nextCode } from './short-name';
import { useSending } from './use-sending';

const TORQUE: readonly Unit[] = ['N·m', 'cN·m', 'lbf·ft', 'lbf·in', 'kgf·m', 'kgf·cm'];
/** What a gauge may show; an angle tool shows degrees. */
const GAUGE: readonly Unit[] = [
  'mm',
  'in',
  'kPa',
  'bar',
  'psi',
  'N',
  'kg',
  'V',
  'A',
  'Ω',
  '°',
  '%',
  's',
  'min',
  'rpm',
  ...TORQUE,
];

const unitsOf = (kind: ToolKind): readonly Unit[] =>
  kind === 'gauge' ? GAUGE : kind === 'angle' ? ['°'] : TORQUE;

const EMPTY = {
  id: null as string | null,
  name: '',
  kind: 'click' as ToolKind,
  low: '',
  high: '',
  unit: 'N·m' as Unit,
  length: '',
  calibration: NO_CALIBRATION,
};

/** A torque tool or gauge: range, handle length, and its last calibration. */
export function AddTool({ taken }: { readonly taken: readonly string[] }) {
  const [draft, setDraft] = useState(EMPTY);
  const [added, setAdded] = useState('');
  const sending = useSending();
  const id = draft.id ?? nextCode('T', taken);
  const units = unitsOf(draft.kind);
  const set = (part: Partial<typeof EMPTY>): void => setDraft({ ...draft, ...part });

  const add = (): Promise<void> =>
    sending.send(
      {
        type: 'add-tool',
        tool: id,
        name: draft.name.trim(),
        kind: draft.kind,
        low: draft.low.trim(),
        high: draft.high.trim(),
        unit: draft.unit,
        ...(draft.length === '' ? {} : { length: { value: draft.length.trim(), unit: 'mm' as const } }),
        ...(draft.calibration.due === '' ? {} : { calibrated: calibrationOf(draft.calibration) }),
      },
      `${id} is on the wall.`,
      () => {
        setAdded(`${id} ${draft.name}`);
        setDraft({ ...EMPTY, kind: draft.kind, unit: draft.unit });
      },
    );

  return (
    <form
      className="sheet form"
      aria-labelledby="add-tool"
      onSubmit={(event) => {
        event.preventDefault();
        void add();
      }}
    >
      <header>
        <h2 id="add-tool">Add a tool</h2>
      </header>
      <div className="body">
        <div className="two">
          <Field
            label="Code"
            hint="as it is engraved"
            value={id}
            onChange={(event) => set({ id: event.target.value })}
            error={sending.faultOf('tool')}
            maxLength={40}
            autoComplete="off"
            required
          />
          <Field
            label="Name"
            value={draft.name}
            onChange={(event) => set({ name: event.target.value })}
            error={sending.faultOf('name')}
            maxLength={100}
            autoComplete="off"
            required
          />
        </div>
        <div className="three">
          <SelectField
            label="Kind"
            value={draft.kind}
            onChange={(event) => {
              const kind = TOOL_KINDS.find((each) => each === event.target.value) ?? 'click';
              set({ kind, unit: unitsOf(kind)[0] ?? 'N·m' });
            }}
          >
            {TOOL_KINDS.map((kind) => (
              <option key={kind}>{kind}</option>
            ))}
          </SelectField>
          <Field
            label="Lowest mark"
            value={draft.low}
            onChange={(event) => set({ low: event.target.value })}
            error={sending.faultOf('low')}
            inputMode="decimal"
            pattern="\s*\d+(\.\d+)?\s*"
            title="a number, like 20 or 4.5"
            required
          />
          <Field
            label="Highest mark"
            value={draft.high}
            onChange={(event) => set({ high: event.target.value })}
            error={sending.faultOf('high')}
            inputMode="decimal"
            pattern="\s*\d+(\.\d+)?\s*"
            title="a number, like 100"
            required
          />
          <SelectField
            label="Unit"
            value={draft.unit}
            onChange={(event) =>
              set({ unit: units.find((each) => each === event.target.value) ?? draft.unit })
            }
          >
            {units.map((unit) => (
              <option key={unit}>{unit}</option>
            ))}
          </SelectField>
          <Field
            label="Length, mm"
            hint="drive to handle mark; asked for with an adapter"
            value={draft.length}
            onChange={(event) => set({ length: event.target.value })}
            inputMode="decimal"
            pattern="\s*\d+(\.\d+)?\s*"
            title="a number, like 380"
          />
        </div>
        <CalibrationFields
          draft={draft.calibration}
          onChange={(calibration) => set({ calibration })}
          mayBeNone
        />
        <AnswerLines sending={sending} done={`${added} is on the wall.`} />
        <div className="acts">
          <Button kind="main" type="submit" held={sending.isBusy}>
            Add the tool
          </Button>
        </div>
      </div>
    </form>
  );
}
