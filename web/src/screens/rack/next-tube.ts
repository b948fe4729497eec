import { html, nothing } from 'lit';
import type { Tube } from '../../../../server/api/tubes.ts';
import '../../parts/next-step.ts';
import { linkTo } from '../../shell/route.ts';
import { num } from '../../text/numbers.ts';
import { rackWords } from '../../text/rack.ts';
import { turnOf } from './rack-list.ts';

/** The tube whose turn it is as a screen's next step; nothing where no tube waits. */
export function nextTube(tubes: readonly Tube[]) {
  const turn = turnOf(tubes);
  if (!('tube' in turn)) return nothing;
  const t = rackWords();
  const { tube } = turn;
  const { rungsDone, rungsTotal } = tube.known;
  const [label, hint] =
    turn.kind === 'go on'
      ? [t.goOn(tube.label), t.goOnHint(num(rungsDone, 0), num(rungsTotal, 0))]
      : turn.kind === 'fit'
        ? [t.goOn(tube.label), t.fitHint]
        : [t.measure(tube.label), tube.role === 'white' ? t.measureWhiteHint : t.measureHint];
  return html`<tl-next slot="next" label=${label} hint=${hint} href=${linkTo('ladder', tube.id)}></tl-next>`;
}
