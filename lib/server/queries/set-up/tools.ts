/** The shop's torque tools, gauges and adapters. */
import 'server-only';
import type { Day } from '@/lib/domain/base/vocabulary';
import { calibrationOn, lastCalibration } from '@/lib/domain/torque/tool';
import type { Tool } from '@/lib/domain/torque/tool';
import type { Database } from '@/lib/server/database';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import { shopDay } from '@/lib/wire/shop-day';
import type { ToolsView } from '@/lib/wire/views/set-up';
import { dayWords } from '@/lib/wire/views/when';

export const toolsView = async (db: Database): Promise<ToolsView> => {
  const [shop, { zone }] = await Promise.all([loadShop(db), shopSetting(db)]);
  const today = shopDay(zone)(new Date().toISOString());
  return {
    tools: Object.values(shop.tools).map((tool) => ({
      id: tool.id,
      name: tool.name,
      kind: tool.kind,
      range: `${tool.low} to ${tool.high} ${tool.unit}`,
      length: tool.length === undefined ? null : `${tool.length.value} ${tool.length.unit}`,
      ...trustIn(tool, today),
    })),
    adapters: Object.values(shop.adapters).map(({ id, name, extension, angle }) => ({
      id,
      name,
      says: `${extension.value} ${extension.unit} out${angle === 0 ? ', in line' : `, at ${String(angle)}°`}`,
    })),
    today,
  };
};

const trustIn = (tool: Tool, today: Day): { readonly calibration: string; readonly isUsable: boolean } => {
  const open = tool.suspect.find(({ until }) => until === null);
  if (open !== undefined) return { calibration: `suspect: ${open.reason}`, isUsable: false };
  const last = lastCalibration(tool);
  if (last === null) return { calibration: 'never calibrated', isUsable: false };
  return calibrationOn(tool, today) === null
    ? { calibration: `out since ${dayWords(last.due, today)}`, isUsable: false }
    : { calibration: `due ${dayWords(last.due, today)}`, isUsable: true };
};
