/** May this tool or gauge be believed now? The same question for torquing, re-applying and measuring. */
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { Day, Instant } from '@/lib/domain/base/vocabulary';
import { calibrationOn, knownSuspectAt, lastCalibration } from './tool';
import type { Tool } from './tool';

/** In calibration on that day, and not known to be suspect at that time. */
export const trustRefusals = (
  tool: Tool,
  { day, judgedAt }: { readonly day: Day; readonly judgedAt: Instant },
): readonly Refusal[] => {
  const found: Refusal[] = [];
  if (calibrationOn(tool, day) === null)
    found.push(
      refuse('tool-out-of-calibration', { tool: tool.id, due: lastCalibration(tool)?.due ?? null, day }),
    );
  const suspect = knownSuspectAt(tool, judgedAt);
  if (suspect !== null)
    found.push(refuse('tool-suspect', { tool: tool.id, reason: suspect.reason, from: suspect.from }));
  return found;
};
