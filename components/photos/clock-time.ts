/** On the device's own clock: what the person remembers. Another day is said with it. */
export const clockTime = (at: string): string => {
  const then = new Date(at);
  const time = then.toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });
  return then.toDateString() === new Date().toDateString()
    ? time
    : `${then.toLocaleDateString('en-GB', { day: 'numeric', month: 'short' })} ${time}`;
};
