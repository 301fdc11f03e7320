/** Ids of the demo's commands: UUIDs that are the same in every run, so that a seed which was cut off can go on. */
import { createHash } from 'node:crypto';

/** The nth command's, made as a version 5 UUID is (RFC 9562): SHA-1 of a name, with version and variant put in. */
export const demoCommandId = (number: number): string => {
  const hash = createHash('sha1')
    .update(`slipmark demo, command ${String(number)}`)
    .digest();
  hash[6] = ((hash[6] ?? 0) & 0x0f) | 0x50;
  hash[8] = ((hash[8] ?? 0) & 0x3f) | 0x80;
  const hex = hash.toString('hex');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20, 32)].join(
    '-',
  );
};
