import { fromExactText } from '@/lib/domain/car/joint';
import { parseDecimal, toDecimalText } from '@/lib/domain/base/exact';
import { benchOf, boundsOnTool } from './model/judge';
import { EMPTY_SITTING } from './model/sitting';
import { setOf, wantOf } from './model/want';
import { adapterOf, toolOf, toolView } from './model/ways';
import type { Way } from './model/ways';
import { capital, fixed, placesFor } from './model/words';
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
  const places = placesFor(bounds);
  const set = setOf(bench, EMPTY_SITTING, null);
  const isClick = tool?.kind === 'click';
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
      {standing === null || standing.readings.length === 0 ? null : (
        <Readings
          heading={capital(joint.word.one)}
          unit={standing.unit ?? ''}
          scale={joint.method === 'prevailing' ? null : bounds}
          say={(value) => fixed(value, places)}
          rows={standing.readings.map(({ fastener, shown, delivered }) => ({
            id: String(fastener),
            head: String(fastener),
            text: isClick ? 'clicked' : shown,
            scale: joint.method === 'prevailing' || isClick ? null : bounds,
            state: 'in',
            says: 'in band',
            also: `${toDecimalText(fromExactText(delivered), 1)} at ${joint.word.one}`,
          }))}
        />
      )}
    </>
  );
}

/** A click tool gave every fastener the same. */
const settingSaid = ({ view }: Desk, isClick: boolean): string | null => {
  const shown = view.standing?.readings[0]?.shown ?? null;
  const value = isClick && shown !== null ? parseDecimal(shown) : null;
  return value === null ? null : toDecimalText(value, 2);
};
