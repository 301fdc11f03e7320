import type { ReactNode } from 'react';
import { correct } from './model/moves';
import type { Ask } from './model/asks';
import { rowGroups } from './model/rows';
import type { RowData } from './model/rows';
import { setOf, wantOf } from './model/want';
import { adapterOf, isUsable, toolView } from './model/ways';
import { fixed, placesFor } from './model/words';
import { Readings } from './readings';
import type { ReadingRow } from './readings';
import { Taps } from './taps';
import { ToolCard } from './tool-card';
import type { Desk } from './use-desk';

interface FinalMidProps {
  readonly desk: Desk;
  readonly current: Ask | null;
  readonly onTool: () => void;
  readonly isLocked: boolean;
  /** Hung over the readings: what stands in the way, drafts. */
  readonly above: ReactNode;
  /** Hung under them: over, refused, not known. */
  readonly below: ReactNode;
}

/** Value, tool and readings. */
export function FinalMid({ desk, current, onTool, isLocked, above, below }: FinalMidProps) {
  const { view, now, bench } = desk;
  const { sitting, seat } = now;
  const groups = rowGroups(bench, sitting, current);
  return (
    <div className="so-mid">
      {above}
      <ToolCard
        view={view}
        want={wantOf(view)}
        set={setOf(bench, sitting, current)}
        tool={toolView(view, seat.way)}
        adapter={adapterOf(view, seat.way)}
        onPick={view.tools.length === 0 ? undefined : onTool}
        noToolSays={noTool(desk)}
        isMissing={view.tools.length > 0 && !view.tools.some(({ ways }) => ways.some(isUsable))}
      />
      <Taps desk={desk} current={current} />
      {groups.map((group) => {
        const { scale } = group;
        const places = scale === null ? 1 : placesFor(scale);
        return (
          <Readings
            key={group.heading + group.unit}
            heading={group.heading}
            unit={group.unit === '' ? '' : `${group.unit}${group.isOnTool ? ' on the tool' : ''}`}
            scale={scale}
            say={(value) => fixed(value, places)}
            rows={group.rows.map((row) => ({
              ...shown(row, desk, isLocked),
              isCurrent: row.ask.id === current?.id,
            }))}
          />
        );
      })}
      {below}
    </div>
  );
}

const noTool = ({ view }: Desk): string => {
  const { method, specification } = view.joint;
  if (method === 'sequence') return 'No tool named';
  if (view.tools.length === 0)
    return specification.kind === 'no-value-yet' ? 'No value yet' : 'By hand tool: no torque tool is named';
  return view.tools.some(({ ways }) => ways.some(isUsable))
    ? 'Choose a tool'
    : 'No tool in the shop can make this now';
};

const shown = (row: RowData, { now, view }: Desk, isLocked: boolean): ReadingRow => ({
  id: row.ask.id,
  head: row.head,
  text: row.text,
  scale: row.scale,
  state: row.state,
  says: row.says,
  also: row.also,
  ...(row.name === undefined ? {} : { name: row.name }),
  ...(row.mayCorrect && !isLocked && view.joint.method !== 'firm'
    ? {
        onPick: () => {
          void now.change((sitting) => correct(sitting, row.ask));
        },
      }
    : {}),
});
