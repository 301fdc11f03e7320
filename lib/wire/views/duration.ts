/** Spans of time as the shop says them: `45 min`, `1 h 20 min`, `18 h`. */
export const durationWords = (minutes: number): string => {
  const whole = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (whole === 0) return `${String(rest)} min`;
  return rest === 0 ? `${String(whole)} h` : `${String(whole)} h ${String(rest)} min`;
};

/** `waiting 40 min`, `waiting 18 h`, `waiting 3 days`: the longer, the coarser. */
export const waitingWords = (from: string, now: string): string => {
  const minutes = Math.max(0, Math.floor((Date.parse(now) - Date.parse(from)) / 60_000));
  if (minutes < 60) return `waiting ${String(minutes)} min`;
  const hours = Math.floor(minutes / 60);
  return hours < 48 ? `waiting ${String(hours)} h` : `waiting ${String(Math.floor(hours / 24))} days`;
};
