import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { keptVisit } from '../../../build/shared/heat/work/visit.js';
import { emptyShop, foldShop } from '../../../build/shared/shop/shop.js';
import { worked } from '../parts/work-watch.mjs';

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc');

/** What a watch and the shop hold after each hour of a working day, one probe at 10 Hz and a mark every 15 s. */
export function work({ hours }) {
  const session = { id: 's', ironId: 'iron', ironName: 'Iron', simulated: false, originUtcMs: 0 };
  let shop = emptyShop;
  const told = (finding) => {
    if (finding.kind !== 'visit') return;
    shop = foldShop(shop, { kind: 'visit', visit: keptVisit(finding.visit, session) });
  };
  const held = [];
  for (const { hours: after, state } of worked(hours, told)) {
    collect();
    held.push({
      hours: after,
      heapBytes: process.memoryUsage().heapUsed,
      stateBytes: JSON.stringify(state).length,
      visits: Object.keys(shop.visits).length,
      shopBytes: JSON.stringify(shop).length,
    });
  }
  return { held };
}
