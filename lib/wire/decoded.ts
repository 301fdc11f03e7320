/** The text that a part of an address stands for. A stray percent sign names nothing, and is no fault of the server. */
export const decoded = (text: string): string => {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
};
