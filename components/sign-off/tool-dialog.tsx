'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { Glyph } from '@/components/ui/glyph';
import { toDecimalText } from '@/lib/domain/base/exact';
import { fromExactText } from '@/lib/domain/car/joint';
import type { SignOffView, ToolView, ToolWay } from '@/lib/wire/views/sign-off';
import { isUsable, wayId } from './model/ways';
import type { Way } from './model/ways';

interface ToolDialogProps {
  readonly view: SignOffView;
  readonly chosen: Way | null;
  /** What another tool would throw away, `2 nuts`; null where nothing is begun. */
  readonly begun: string | null;
  /** A warning is not sent, or a signing has no answer: no other tool until then. */
  readonly isOwed: boolean;
  readonly onChoose: (way: Way | null) => void;
  readonly onClose: () => void;
  /** A sequence needs none. */
  readonly mayHaveNone: boolean;
}

/** Every torque tool of the shop. One that can't be used stands here too, with the reason. */
export function ToolDialog(props: ToolDialogProps) {
  const { view, chosen, begun, isOwed, onChoose, onClose, mayHaveNone } = props;
  const [asked, setAsked] = useState<{ readonly way: Way | null } | null>(null);
  const choose = (way: Way | null): void => {
    if (wayId(way) === wayId(chosen)) onClose();
    else if (begun !== null) setAsked({ way });
    else onChoose(way);
  };
  const usable = view.tools.filter(({ ways }) => ways.some(isUsable));
  const others = view.tools.filter((tool) => !usable.includes(tool));
  return (
    <Dialog open onClose={onClose} labelledBy="so-tools" className="so-dialog">
      <header>
        <h2 id="so-tools">Which tool</h2>
        <Button kind="quiet" onClick={onClose}>
          Close
        </Button>
      </header>
      {asked === null ? (
        <div className="so-toollist">
          {usable.length === 0 ? (
            <p className="so-none">
              No tool in the shop can make this joint now. The reasons stand beside each.
            </p>
          ) : null}
          <ul>
            {mayHaveNone ? (
              <li>
                <WayButton
                  name="No tool to name"
                  says="the steps are done without one"
                  setting=""
                  isChosen={chosen === null}
                  onChoose={() => {
                    choose(null);
                  }}
                />
              </li>
            ) : null}
            {usable.map((tool) => (
              <Usable key={tool.tool.id} tool={tool} view={view} chosen={chosen} onChoose={choose} />
            ))}
          </ul>
          {others.length === 0 ? null : (
            <>
              <h3>Can’t be used here</h3>
              <ul>
                {others.map((tool) => (
                  <Barred key={tool.tool.id} tool={tool} />
                ))}
              </ul>
            </>
          )}
        </div>
      ) : (
        <div className="in">
          <p>
            One tool makes the whole pass. With{' '}
            {asked.way === null ? 'none' : wayId(asked.way).replace(' ', ' and ')} the pass starts again, and{' '}
            <b>{begun}</b> of the draft is discarded.
            {isOwed
              ? ' A reading over the window is still on its way to the server; wait until it is there.'
              : ''}
          </p>
          <div className="acts">
            <Button
              onClick={() => {
                setAsked(null);
              }}
            >
              Keep the tool
            </Button>
            <Button
              kind="stop"
              held={isOwed}
              onClick={() => {
                onChoose(asked.way);
              }}
            >
              Discard, start the pass again
            </Button>
          </div>
        </div>
      )}
    </Dialog>
  );
}

function Usable({
  tool,
  view,
  chosen,
  onChoose,
}: {
  readonly tool: ToolView;
  readonly view: SignOffView;
  readonly chosen: Way | null;
  readonly onChoose: (way: Way) => void;
}) {
  const { id, name, unit } = tool.tool;
  return tool.ways.filter(isUsable).map((way) => {
    const adapter = view.adapters.find((each) => each.id === way.adapter) ?? null;
    const choice: Way = { tool: id, adapter: way.adapter };
    return (
      <li key={wayId(choice)}>
        <WayButton
          name={`${id} ${name}${adapter === null ? '' : `, with ${adapter.id} ${adapter.name}`}`}
          says={`${tool.range}, ${tool.good}${fitWords(view, way)}`}
          setting={way.setting === null ? '' : `${toDecimalText(fromExactText(way.setting), 1)} ${unit}`}
          formula={way.formula}
          isChosen={wayId(chosen) === wayId(choice)}
          onChoose={() => {
            onChoose(choice);
          }}
        />
      </li>
    );
  });
}

const fitWords = ({ joint }: SignOffView, { adapter }: ToolWay): string =>
  joint.asksAdapter && adapter === null ? '; the place asks for a crow’s-foot' : '';

interface WayButtonProps {
  readonly name: string;
  readonly says: string;
  readonly setting: string;
  readonly formula?: string;
  readonly isChosen: boolean;
  readonly onChoose: () => void;
}

function WayButton({ name, says, setting, formula = '', isChosen, onChoose }: WayButtonProps) {
  return (
    <button
      type="button"
      className={isChosen ? 'so-way on' : 'so-way'}
      aria-pressed={isChosen}
      onClick={onChoose}
    >
      <i aria-hidden="true" />
      <span>
        <b>{name}</b>
        <br />
        <span className="small dim">{says}</span>
      </span>
      <span className="so-wayset">
        <b className="num">{setting}</b>
        <span className="small dim num">{formula}</span>
      </span>
    </button>
  );
}

/** The straight way's reasons; an adapter's own stand beside it where they differ. */
function Barred({ tool }: { readonly tool: ToolView }) {
  const straight = tool.ways.find(({ adapter }) => adapter === null);
  return (
    <li className="so-barred">
      <Glyph name="caldue" />
      <span>
        <b>
          {tool.tool.id} {tool.tool.name}
        </b>
        <span className="small">{(straight?.whyNot ?? []).join(' ')}</span>
      </span>
    </li>
  );
}
