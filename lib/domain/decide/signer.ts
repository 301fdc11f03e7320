/** What a signer was on the day: written into the event, so that no later change of books alters what was signed. */
import type { ToolId } from '@/lib/domain/base/vocabulary';
import type { SignedAs } from '@/lib/domain/event-meta';
import type { CarPayload } from '@/lib/domain/events';
import type { Facts } from '@/lib/domain/facts';
import { isQualified } from '@/lib/domain/shop/rows';
import { calibrationOn } from '@/lib/domain/torque/tool';

/** A signed event with its signer's roles and qualifications, and the calibration of the tool, as they stand now. */
export const asSigned = (facts: Facts, payload: CarPayload): CarPayload =>
  'signed' in payload
    ? { ...payload, signed: { ...payload.signed, as: signedAs(facts, toolOf(payload)) } }
    : payload;

const signedAs = (facts: Facts, tool: ToolId | null): SignedAs => {
  const person = facts.people[facts.actor];
  const found = tool === null ? undefined : facts.tools[tool];
  return {
    ...(person === undefined ? {} : { name: person.name }),
    roles: person?.roles ?? [],
    qualifications: (person?.qualifications ?? [])
      .map(({ key }) => key)
      .filter((key, at, all) => all.indexOf(key) === at)
      .filter((key) => person !== undefined && isQualified(person, key, facts.day)),
    tool,
    calibration: found === undefined ? null : calibrationOn(found, facts.day),
  };
};

const toolOf = (payload: CarPayload): ToolId | null => {
  if (payload.type === 'joint-marked') return payload.mark.tool;
  return payload.type === 'joint-rechecked' ? payload.tool : null;
};
