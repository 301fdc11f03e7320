import { fixed, placesFor } from '@/components/sign-off/model/words';
import { fromExactText } from '@/lib/domain/car/joint';
import type { TorqueLine } from '@/lib/wire/views/my-work';

/** The number that goes on the tool is the biggest; what the fastener gets by it stands beside it, smaller. */
export function SetTo({ torque }: { readonly torque: TorqueLine }) {
  const { tool, kind, adapter, setting, unit, target, low, high } = torque;
  const bounds = {
    low: low === null ? null : fromExactText(low),
    high: high === null ? null : fromExactText(high),
  };
  return (
    <span className="setto">
      <span className="on">{kind === 'click' ? `set ${tool} to` : `read ${tool} at`}</span>
      <b className="num">{fixed(fromExactText(setting), placesFor(bounds))}</b>
      <span className="un">{unit}</span>
      <span className="small dim">
        {target} at the fastener{adapter === null ? '' : `, with ${adapter}`}
      </span>
    </span>
  );
}
