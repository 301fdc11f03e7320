import { Glyph } from '@/components/ui/glyph';
import type { Adapter, Tool } from '@/lib/domain/torque/tool';
import type { SignOffView, ToolView } from '@/lib/wire/views/sign-off';

export interface SetSaid {
  /** `Read the tool at`, `Set the tool to`. */
  readonly label: string;
  readonly big: string;
  readonly unit: string;
  readonly below: string;
}

interface ToolCardProps {
  readonly view: SignOffView;
  readonly want: { readonly big: string; readonly small: string; readonly below: string };
  readonly set: SetSaid | null;
  readonly tool: ToolView | null;
  readonly adapter: Adapter | null;
  /** Absent where it was chosen by another, earlier. */
  readonly onPick?: () => void;
  readonly noToolSays: string;
  /** One is needed, and the shop has none that can. */
  readonly isMissing?: boolean;
}

/** What the fastener must get, and, largest of all, the number that goes on the tool. */
export function ToolCard(props: ToolCardProps) {
  const { view, want, set, tool, adapter } = props;
  return (
    <section className="sheet so-tool" aria-label="Value and tool">
      <div className="so-want">
        <span className="label">At the {view.joint.word.one}</span>
        <p className="so-big num">
          {want.big} <small>{want.small}</small>
        </p>
        <span className="small dim">{want.below}</span>
      </div>
      {set === null ? null : (
        <div className="so-set">
          <span className="label">{set.label}</span>
          <p className="so-big so-most num">
            {set.big} <small>{set.unit}</small>
          </p>
          <span className="small num">{set.below}</span>
        </div>
      )}
      {tool === null || adapter === null ? null : <Wrench tool={tool.tool} adapter={adapter} />}
      <Pick {...props} />
    </section>
  );
}

function Pick({
  tool,
  adapter,
  onPick,
  noToolSays,
  isMissing = false,
}: Pick<ToolCardProps, 'tool' | 'adapter' | 'onPick' | 'noToolSays' | 'isMissing'>) {
  const inner =
    tool === null ? (
      <>
        <Glyph name={isMissing ? 'caldue' : 'gap'} />
        <span>
          <b>{noToolSays}</b>
        </span>
        {onPick === undefined ? null : <u>Tools</u>}
      </>
    ) : (
      <>
        <Glyph name="calok" />
        <span>
          <b>
            <span className="nb">{tool.tool.id}</span> {nameOf(tool.tool)}
          </b>
          <br />
          <span className="small dim">
            {tool.good}
            {adapter === null ? '' : `, with ${adapter.id} ${adapter.name}`}
          </span>
        </span>
        {onPick === undefined ? null : <u>Change</u>}
      </>
    );
  return onPick === undefined ? (
    <div className="so-pick">{inner}</div>
  ) : (
    <button type="button" className="so-pick" onClick={onPick}>
      {inner}
    </button>
  );
}

const nameOf = ({ name, low, high, unit }: Tool): string =>
  name.includes(unit) ? name : `${name}, ${low} to ${high} ${unit}`;

/** Why the number on the tool is not the plan's own: how far the adapter reaches, and where the hand pulls. */
function Wrench({ tool, adapter }: { readonly tool: Tool; readonly adapter: Adapter }) {
  const length = tool.length === undefined ? '?' : tool.length.value;
  const reach = adapter.extension.value;
  const angle = adapter.angle === 0 ? 'in line' : `at ${String(adapter.angle)}°`;
  return (
    <svg
      className="so-wrench"
      viewBox="0 0 400 58"
      role="img"
      aria-label={`Wrench ${length} ${tool.length?.unit ?? ''}, adapter ${reach} ${adapter.extension.unit}, ${angle}`}
    >
      <path
        className="ol"
        d="M64 16H300Q306 16 306 12H386Q392 12 392 22Q392 32 386 32H306Q306 28 300 28H64"
      />
      <circle className="ol" cx="56" cy="22" r="11" />
      <path className="ol" d="M48 16L28 11Q14 8 12 15L20 19V26L12 30Q14 36 28 33L48 28" />
      <path className="dm" d="M20 40V54M56 37V54M350 37V54M20 48H350" />
      <text x="38" y="45">
        {reach}
      </text>
      <text x="203" y="45">
        {length} {tool.length?.unit ?? ''}
      </text>
    </svg>
  );
}
