import { fromExactText } from '@/lib/domain/car/joint';
import { parseDecimal, toDecimalText } from '@/lib/domain/base/exact';
import { Glyph } from '@/components/ui/glyph';
import { benchOf, boundsOnTool } from './model/judge';
import type { Bounds } from './model/judge';
import { windowOf } from './model/ruled-joint';
import { EMPTY_SITTING } from './model/sitting';
import { setOf, wantOf } from './model/want';
import { adapterOf, toolOf, toolView } from './model/ways';
import type { Way } from './model/ways';
import { headingFor } from './model/rows';
import { fixed, placesFor } from './model/words';
import { Readings } from './readings';
import { ToolCard } from './tool-card';
import type { Desk } from './use-desk';

/** The final that the joint stands by: with what, and what each fastener got. */
export function Standing({ desk }: { readonly desk: Desk }) {
  const { view } = desk;
  const { standing, joint } = view;
  const way: Way | null =
    standing === null || standing.tool === null ? null : { tool: standing.tool, adapter: standing.adapter };
  const tool = toolOf(view, way);
  const adapter = adapterOf(view, way);
  const bench = benchOf(joint, tool, adapter, view);
  const bounds = boundsOnTool(bench, EMPTY_SITTING, null);
  const set = setOf(bench, EMPTY_SITTING, null);
  const isClick = tool?.kind === 'click';
  const isSame =
    adapter === null &&
    standing?.unit === standing?.window?.unit &&
    joint.method !== 'prevailing' &&
    !isClick;
  return (
    <>
      <ToolCard
        view={view}
        want={wantOf(view)}
        set={
          set === null
            ? null
            : {
                ...set,
                label: isClick ? 'Tool was set to' : 'Tool was read at',
                big: settingSaid(desk, isClick) ?? set.big,
              }
        }
        tool={toolView(view, way)}
        adapter={adapter}
        noToolSays={standing === null ? 'Not final yet' : 'By hand tool, or a tool that left the shop'}
      />
      {standing === null || standing.readings.length === 0 ? null : isClick ? (
        <section className="so-taps" aria-label="Clicks">
          <h3>
            Clicks <span className="small dim">all clicked, in order</span>
          </h3>
          <ol>
            {standing.readings.map(({ fastener }) => (
              <li key={fastener} className="in">
                <span className="so-n">{fastener}</span>
                <Glyph name="passed" size={20} label="clicked" />
              </li>
            ))}
          </ol>
        </section>
      ) : (
        <StandingReadings desk={desk} bounds={bounds} isSame={isSame} />
      )}
    </>
  );
}

/** As the tool showed it; where only what the fastener got is on record, that. */
function StandingReadings({
  desk,
  bounds,
  isSame,
}: {
  readonly desk: Desk;
  readonly bounds: Bounds;
  readonly isSame: boolean;
}) {
  const { joint, standing } = desk.view;
  if (standing === null) return null;
  const isNet = standing.readings.some(({ shown }) => shown === null);
  const scale = isNet ? netScale(desk) : bounds;
  const places = placesFor(scale);
  return (
    <Readings
      heading={headingFor(joint.word)}
      unit={
        isNet
          ? `${standing.window?.unit ?? ''} at the ${joint.word.one}`
          : `${standing.unit ?? ''} on the tool`
      }
      scale={scale}
      say={(value) => fixed(value, places)}
      rows={standing.readings.map(({ fastener, shown, delivered }) => {
        const got = toDecimalText(fromExactText(delivered), 2);
        return {
          id: String(fastener),
          head: String(fastener),
          text: isNet ? got : shown,
          scale,
          state: 'in' as const,
          says: 'in band',
          also: isNet ? 'drag taken off' : isSame ? '' : `${got} at ${joint.word.one}`,
        };
      })}
    />
  );
}

const netScale = ({ view }: Desk): Bounds => {
  const { specification } = view.joint;
  if (specification.kind !== 'window') return { low: null, high: null, aim: null };
  const { low, high } = windowOf(specification.window);
  return { low, high, aim: fromExactText(specification.aim) };
};

/** A click tool gave every fastener the same. */
const settingSaid = ({ view }: Desk, isClick: boolean): string | null => {
  const shown = view.standing?.readings[0]?.shown ?? null;
  const value = isClick && shown !== null ? parseDecimal(shown) : null;
  return value === null ? null : toDecimalText(value, 2);
};
