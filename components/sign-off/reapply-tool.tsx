'use client';

import { useState } from 'react';
import { toDecimalText } from '@/lib/domain/base/exact';
import { fromExactText, toExactText } from '@/lib/domain/car/joint';
import { windowText } from '@/lib/domain/plan/window';
import { formulaFor, settingFor } from '@/lib/wire/views/aim';
import type { JointView, SignOffView, ToolView } from '@/lib/wire/views/sign-off';
import { Glyph } from '@/components/ui/glyph';
import { windowOf } from './model/ruled-joint';
import { ToolDialog } from './tool-dialog';

/** It is tried at the low end: what holds that has not come loose, and what is right is not turned on. */
const lowEnd = ({ specification }: JointView) =>
  specification.kind === 'window' ? (specification.window.low ?? specification.window.high) : null;

export const reapplyAt = (joint: JointView): string => {
  const low = lowEnd(joint);
  if (low === null || joint.specification.kind !== 'window') return 'its value';
  return `${toDecimalText(fromExactText(low))} ${joint.specification.window.unit}`;
};

interface ReapplyToolProps {
  readonly view: SignOffView;
  readonly tool: string | null;
  readonly onTool: (tool: string) => void;
}

/** Any good tool that reaches the value; an adapter can’t be named when trying again. */
export function ReapplyTool({ view, tool, onTool }: ReapplyToolProps) {
  const [isOpen, setOpen] = useState(false);
  const chosen = view.tools.find((each) => each.tool.id === tool) ?? null;
  return (
    <>
      <button
        type="button"
        className="so-pick boxed"
        onClick={() => {
          setOpen(true);
        }}
      >
        <Glyph name={chosen === null ? 'gap' : 'calok'} />
        <span>
          <b>{chosen === null ? 'Tried with which tool?' : `${chosen.tool.id} ${chosen.tool.name}`}</b>
          <br />
          <span className="small dim">
            {chosen === null
              ? `at ${reapplyAt(view.joint)}`
              : `${chosen.tool.kind === 'click' ? 'set to' : 'read at'} ${settingOn(view, chosen)}, ${chosen.good}`}
          </span>
        </span>
        <u>{chosen === null ? 'Choose' : 'Change'}</u>
      </button>
      {isOpen ? (
        <ToolDialog
          view={{
            ...view,
            joint: { ...view.joint, asksAdapter: false },
            tools: view.tools.map((each) => asReapplied(view, each)),
          }}
          chosen={tool === null ? null : { tool, adapter: null }}
          begun={null}
          isOwed={false}
          mayHaveNone={false}
          onClose={() => {
            setOpen(false);
          }}
          onChoose={(way) => {
            setOpen(false);
            if (way !== null) onTool(way.tool);
          }}
        />
      ) : null}
    </>
  );
}

const asReapplied = ({ joint }: SignOffView, view: ToolView): ToolView => {
  const low = lowEnd(joint);
  const unit = joint.specification.kind === 'window' ? joint.specification.window.unit : null;
  const value = low === null ? null : fromExactText(low);
  const setting = value === null || unit === null ? null : settingFor(value, unit, view.tool, null);
  return {
    ...view,
    ways: [
      {
        adapter: null,
        whyNot: view.whyNotReapply,
        setting: setting === null ? null : toExactText(setting),
        formula: value === null || unit === null ? '' : formulaFor(value, unit, view.tool, null),
      },
    ],
  };
};

const settingOn = (view: SignOffView, tool: ToolView): string => {
  const setting = asReapplied(view, tool).ways[0]?.setting ?? null;
  if (setting === null)
    return view.joint.specification.kind === 'window'
      ? windowText(windowOf(view.joint.specification.window))
      : '';
  return `${toDecimalText(fromExactText(setting), 1)} ${tool.tool.unit}`;
};
