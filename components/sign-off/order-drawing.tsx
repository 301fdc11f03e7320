import type { DrawingView, JointView } from '@/lib/wire/views/sign-off';

export type HeadState = 'todo' | 'now' | 'done' | 'over' | 'signed';

interface OrderDrawingProps {
  readonly drawing: DrawingView;
  readonly joint: Pick<JointView, 'order' | 'level' | 'word'>;
  readonly stateOf: (fastener: number) => HeadState;
  readonly isDoubted: boolean;
}

/** The fasteners in their pattern, with the way the wrench goes. Not the part: where it sits is in the plan. */
export function OrderDrawing({ drawing, joint, stateOf, isDoubted }: OrderDrawingProps) {
  const at = new Map(drawing.points.map((point) => [point.fastener, point]));
  const way = joint.order
    .flatMap((fastener) => at.get(fastener) ?? [])
    .map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${String(x)} ${String(y)}`)
    .join('');
  return (
    <svg className="so-drawing" viewBox="0 0 300 356" role="img" aria-label={label(drawing, joint, stateOf)}>
      <path className="part" d="M24 44L46 22H254L276 44V312L254 334H46L24 312Z" />
      <path className="cl" d="M150 6V350M8 178H292" />
      <path className="ord" d={way} />
      {drawing.points.map(({ fastener, x, y }) => (
        <Fastener
          key={fastener}
          fastener={fastener}
          x={x}
          y={y}
          radius={drawing.radius}
          state={stateOf(fastener)}
          stripes={joint.level === 'verified' ? 2 : joint.level === 'final' ? 1 : 0}
          isDoubted={isDoubted}
        />
      ))}
    </svg>
  );
}

const STATE_WORDS: Readonly<Record<HeadState, string>> = {
  todo: 'to come',
  now: 'now',
  done: 'done',
  over: 'over',
  signed: 'signed',
};

const label = (
  drawing: DrawingView,
  { order, word }: OrderDrawingProps['joint'],
  stateOf: OrderDrawingProps['stateOf'],
): string =>
  `${drawing.says}. ${order.map((each) => `${word.one} ${String(each)} ${STATE_WORDS[stateOf(each)]}`).join(', ')}`;

interface FastenerProps {
  readonly fastener: number;
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly state: HeadState;
  readonly stripes: number;
  readonly isDoubted: boolean;
}

function Fastener({ fastener, x, y, radius, state, stripes, isDoubted }: FastenerProps) {
  const corners = [0, 60, 120, 180, 240, 300]
    .map((degrees) => {
      const turn = (degrees * Math.PI) / 180;
      return `${(x + radius * Math.cos(turn)).toFixed(1)},${(y + radius * Math.sin(turn)).toFixed(1)}`;
    })
    .join(' ');
  const isPainted = state === 'signed' && stripes > 0;
  return (
    <g className={`so-head-${state}${isDoubted ? ' doubted' : ''}`}>
      <circle cx={x} cy={y} r={radius * 1.28} className="wash" />
      {state === 'now' ? <circle cx={x} cy={y} r={radius * 1.28} className="ring" /> : null}
      <polygon points={corners} className="hd" />
      {isPainted ? <Stripes x={x} y={y} radius={radius} stripes={stripes} isDoubted={isDoubted} /> : null}
      <text
        x={isPainted ? x - radius * 0.28 : x}
        y={y + Math.max(radius, 15) * 0.34}
        fontSize={Math.max(radius, 15)}
      >
        {fastener}
      </text>
    </g>
  );
}

/** Slip marks run off the head on to the part; a doubted one is broken and out of line. */
function Stripes({ x, y, radius, stripes, isDoubted }: Omit<FastenerProps, 'fastener' | 'state'>) {
  const flat = radius * 0.86;
  // One that is doubted is one broken stripe, however many there were.
  const places = stripes === 2 && !isDoubted ? [0.3, 0.58] : [0.42];
  const shift = isDoubted ? radius * 0.22 : 0;
  return (
    <>
      {places.map((place) => {
        const at = x + radius * place;
        return (
          <g key={place} strokeWidth={Math.max(2.5, radius * 0.14)}>
            <path className="on" d={`M${String(at)} ${String(y - flat + 4)}V${String(y + flat - 4)}`} />
            <path
              className="off"
              d={`M${String(at + shift)} ${String(y - flat)}V${String(y - radius * 1.42)}M${String(at + shift)} ${String(y + flat)}V${String(y + radius * 1.42)}`}
            />
          </g>
        );
      })}
    </>
  );
}
