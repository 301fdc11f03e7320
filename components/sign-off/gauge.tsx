import { toNumber } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';

/** Only a drawing: what is in and what is out was judged before, exactly. */
export interface Scale {
  readonly low: Exact | null;
  readonly high: Exact | null;
  readonly aim: Exact | null;
}

/** The band always lies in the same place, so that one look tells high from low on every joint. */
const FROM = 26;
const TO = 74;

const placeIn = ({ low, high }: Scale, value: Exact): number => {
  const at = toNumber(value);
  const from = low === null ? null : toNumber(low);
  const to = high === null ? null : toNumber(high);
  const [a, b] =
    from !== null && to !== null
      ? [from, to === from ? from + 1 : to]
      : from !== null
        ? [from, from * 1.5 + 1]
        : [0, to ?? 1];
  return Math.min(98, Math.max(2, FROM + ((at - a) / (b - a)) * (TO - FROM)));
};

const percent = (value: number): string => `${value.toFixed(2)}%`;

interface GaugeProps {
  readonly scale: Scale;
  /** What the tool showed; null = nothing yet. */
  readonly value: Exact | null;
  readonly isOut: boolean;
}

/** The window as a band, the limits as lines, the reading as a pointer. */
export function Gauge({ scale, value, isOut }: GaugeProps) {
  const from = scale.low === null ? 0 : FROM;
  const to = scale.high === null ? 100 : TO;
  const at = value === null ? null : placeIn(scale, value);
  return (
    <svg className="so-gauge" width="100%" height="40" aria-hidden="true">
      <rect x="0" y="13" width="100%" height="14" className="off" />
      <rect x={percent(from)} y="9" width={percent(to - from)} height="22" className="band" />
      {scale.low === null ? null : <Line className="lim" at={FROM} from={5} to={35} />}
      {scale.high === null ? null : <Line className="lim" at={TO} from={5} to={35} />}
      {scale.aim === null ? null : <Line className="tgt" at={placeIn(scale, scale.aim)} from={9} to={31} />}
      {at === null ? null : (
        <svg x={percent(at)} overflow="visible" className={isOut ? 'mk out' : 'mk'}>
          <path d="M-7 1H7L3 9V39H-3V9Z" />
        </svg>
      )}
    </svg>
  );
}

function Line(props: {
  readonly className: string;
  readonly at: number;
  readonly from: number;
  readonly to: number;
}) {
  const x = percent(props.at);
  return <line className={props.className} x1={x} x2={x} y1={props.from} y2={props.to} />;
}

/** The numbers over the bands: low end, aim, high end. */
export function GaugeAxis({ scale, say }: { readonly scale: Scale; readonly say: (value: Exact) => string }) {
  const marks = [
    { at: FROM, value: scale.low },
    { at: scale.aim === null ? 50 : placeIn(scale, scale.aim), value: scale.aim },
    { at: TO, value: scale.high },
  ].filter(
    ({ value }, index, all) =>
      value !== null && all.findIndex((each) => each.at === all[index]?.at) === index,
  );
  return (
    <svg className="so-axis-scale" width="100%" height="24" aria-hidden="true">
      {marks.map(({ at, value }) =>
        value === null ? null : (
          <text key={at} x={percent(at)} y="17" textAnchor="middle">
            {say(value)}
          </text>
        ),
      )}
    </svg>
  );
}
