/** Tool and adapter: which can make the joint, and which to begin with. */
import type { Adapter, Tool } from '@/lib/domain/torque/tool';
import type { SignOffView, ToolView, ToolWay } from '@/lib/wire/views/sign-off';

export interface Way {
  readonly tool: string;
  readonly adapter: string | null;
}

/** As drafts are kept under. */
export const wayId = (way: Way | null): string =>
  way === null ? '' : way.adapter === null ? way.tool : `${way.tool} ${way.adapter}`;

export const wayOf = (id: string): Way | null => {
  const [tool = '', adapter] = id.split(' ');
  return tool === '' ? null : { tool, adapter: adapter ?? null };
};

export const isUsable = ({ whyNot }: ToolWay): boolean => whyNot.length === 0;

/**
 * The first tool that can: of the kind that the plan names before another, and with an adapter where the place asks
 * for one. Null where none can, or none is used.
 */
export const firstWay = (view: SignOffView): Way | null => {
  const { method, asksAdapter } = view.joint;
  if (method === 'sequence') return null;
  const usable = view.tools.flatMap(({ tool, ways }) =>
    ways
      .filter(isUsable)
      .map(({ adapter }) => ({ way: { tool: tool.id, adapter }, isOfKind: tool.kind === method })),
  );
  const reaching = usable.filter(({ way }) => (way.adapter !== null) === asksAdapter);
  const among = reaching.length > 0 ? reaching : usable;
  return (among.find(({ isOfKind }) => isOfKind) ?? among[0])?.way ?? null;
};

export const toolView = (view: SignOffView, way: Way | null): ToolView | null =>
  view.tools.find(({ tool }) => tool.id === way?.tool) ?? null;

export const toolOf = (view: SignOffView, way: Way | null): Tool | null => toolView(view, way)?.tool ?? null;

export const adapterOf = (view: SignOffView, way: Way | null): Adapter | null =>
  view.adapters.find(({ id }) => id === way?.adapter) ?? null;
