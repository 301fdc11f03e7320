/** The shop's torque tools, gauges and adapters, and what rests on each. */
import 'server-only';
import type { Day, ToolId } from '@/lib/domain/base/vocabulary';
import { calibrationOn, lastCalibration } from '@/lib/domain/torque/tool';
import type { Tool } from '@/lib/domain/torque/tool';
import type { Database } from '@/lib/server/database';
import { loadEveryCar } from '@/lib/server/load/car';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import { shopDay } from '@/lib/wire/shop-day';
import type { SetUpTool, ToolsView } from '@/lib/wire/views/set-up';
import { SUSPECT_WORDS } from '@/lib/wire/views/suspect-words';
import { dayWords } from '@/lib/wire/views/when';
import { inDoubtWords, touchesOf } from './tool-touches';
import type { Touch } from './tool-touches';

export const toolsView = async (db: Database): Promise<ToolsView> => {
  const [shop, { zone }] = await Promise.all([loadShop(db), shopSetting(db)]);
  const today = shopDay(zone)(new Date().toISOString());
  const isAnySuspect = Object.values(shop.tools).some(({ suspect }) => suspect.length > 0);
  // Without one nothing is in doubt by a tool, and no car need be read.
  const cars = isAnySuspect ? await loadEveryCar(db) : [];
  return {
    tools: Object.values(shop.tools).map((tool) =>
      toolOf(tool, today, tool.suspect.length > 0 ? touchesOf(cars, shop, tool.id) : []),
    ),
    adapters: Object.values(shop.adapters).map(({ id, name, extension, angle }) => ({
      id,
      name,
      says: `${extension.value} ${extension.unit} out${angle === 0 ? ', in line' : `, at ${String(angle)}°`}`,
    })),
    today,
  };
};

/** One tool as lists and its own page show it. */
export const toolOf = (tool: Tool, today: Day, touches: readonly Touch[]): SetUpTool => ({
  id: tool.id,
  name: tool.name,
  kind: tool.kind,
  isGauge: tool.kind === 'gauge',
  range: `${tool.low} to ${tool.high} ${tool.unit}`,
  unit: tool.unit,
  length: tool.length === undefined ? null : `${tool.length.value} ${tool.length.unit}`,
  cycles:
    tool.cycles === undefined
      ? null
      : `${String(tool.cycles.used)} of ${String(tool.cycles.limit)} cycles since its last calibration`,
  inDoubt: inDoubtWords(touches),
  ...trustIn(tool, today),
});

const trustIn = (
  tool: Tool,
  today: Day,
): { readonly calibration: string; readonly isUsable: boolean; readonly isSuspect: boolean } => {
  const open = tool.suspect.find(({ until }) => until === null);
  if (open !== undefined)
    return { calibration: `suspect: ${SUSPECT_WORDS[open.reason]}`, isUsable: false, isSuspect: true };
  const last = lastCalibration(tool);
  if (last === null) return { calibration: 'never calibrated', isUsable: false, isSuspect: false };
  return calibrationOn(tool, today) === null
    ? { calibration: `out since ${dayWords(last.due, today)}`, isUsable: false, isSuspect: false }
    : { calibration: `due ${dayWords(last.due, today)}`, isUsable: true, isSuspect: false };
};

/** For the address of a page: whether there is such a tool. */
export const isTool = async (db: Database, id: ToolId): Promise<boolean> =>
  (await loadShop(db)).tools[id] !== undefined;
