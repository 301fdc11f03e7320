/**
 * The name of a command: a UUID (version 4), made on the device before the first send, so that however often the
 * network carries it, it counts once. By getRandomValues: randomUUID is missing on plain http in a shop's own
 * network (D47).
 */
export const newId = (): string => {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes.set([((bytes[6] ?? 0) & 0x0f) | 0x40], 6);
  bytes.set([((bytes[8] ?? 0) & 0x3f) | 0x80], 8);
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
};
