import { GLYPHS, RAIL_SIGNS } from './glyph-drawings';

const symbols = (drawings: Readonly<Record<string, string>>, prefix: string, grid: number): string =>
  Object.entries(drawings)
    .map(
      ([name, drawing]) =>
        `<symbol id="${prefix}-${name}" viewBox="0 0 ${grid} ${grid}" stroke-width="${grid === 24 ? 1.75 : 1}">${drawing}</symbol>`,
    )
    .join('');

const SYMBOLS = symbols(GLYPHS, 'g', 24) + symbols(RAIL_SIGNS, 'r', 12);

/** All signs, once in the page; the layout renders it. Each use of one then costs a few bytes. */
export function Sprite() {
  return (
    <svg
      width="0"
      height="0"
      className="sprite"
      aria-hidden="true"
      dangerouslySetInnerHTML={{ __html: SYMBOLS }}
    />
  );
}
