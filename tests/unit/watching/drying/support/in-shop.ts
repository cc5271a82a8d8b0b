import { setImmediate } from 'node:timers/promises';
import { expect } from 'vitest';
import { firstSettings } from '../../../../../daemon/settings/settings.ts';
import type { CoatAct, CoatAnswer } from '../../../../../shared/messages/cure.ts';
import { startingPiece } from '../../../../../shared/piece/starting.ts';
import type { ShopEntry } from '../../../../../shared/shop/entry.ts';
import { cement } from '../../../web/support/shop-samples.ts';
import { type BenchOptions, bench, FakeSource } from '../../support/bench.ts';

/** Ids of examples that the program starts with. */
export const waterBorne = 'example-water-borne';
export const solventBorne = 'example-solvent-borne';

/** So that no two shops name their commands alike. */
let shops = 0;

export interface InShop extends Pick<BenchOptions, 'aheadMs' | 'byWallClock'> {
  readonly hot?: boolean;
  /** Null: it is read later. */
  readonly book?: readonly ShopEntry[] | null;
}

/** An iron, a demo flap with two sides, and air as the instructions have it. */
export async function inShop({ hot = true, book = [], ...clock }: InShop = {}) {
  const settings = {
    ...firstSettings,
    cements: [...firstSettings.cements, cement],
    pieces: [
      {
        ...startingPiece('Demo flap', 'spruce', ['Upper', 'Lower']),
        id: 'flap',
        version: 1,
        madeAt: '2026-03-01T08:00:00Z',
      },
    ],
  };
  const one = bench({ settings, ...clock });
  if (book !== null) one.program.drying.keeper.takeBook(book);
  const iron = new FakeSource('A', one.clock);
  one.program.addSource(iron);
  iron.link('connected');
  one.heat(iron, 20, 1);
  if (hot) one.heat(iron, 121, 20);
  const { cure } = one.desk;
  shops += 1;
  const shop = shops;
  let count = 0;
  const act = async (said: CoatAct, commandId = `${shop} c${(count += 1)}`) => {
    const outcome = await cure.act(said, commandId);
    await setImmediate();
    return outcome;
  };
  // Before the book was read a command would wait for it; what is put there later tells the air itself.
  if (book !== null) await cure.sayAir({ airC: 23, rhPct: 50 }, 'air');
  const areas = settings.pieces[0]?.areas ?? [];
  const area = (name: string, side = 1): string =>
    areas.find((a) => a.name === name && a.side === side)?.id ?? expect.unreachable();
  const put = async (of: string, name: string | null = null) => {
    const places = [{ side: 1 as const, area: name === null ? null : area(name) }];
    await act({ kind: 'start', cement: of, piece: 'flap', places, agoS: 0 });
    return (
      one.journal.flatMap((e) => (e.happened.kind === 'coats' ? e.happened.places : [])).at(-1)?.coat ?? ''
    );
  };
  const coat = (id: string): CoatAnswer =>
    cure.coats().coats.find((c) => c.id === id) ?? expect.unreachable(`no coat ${id}`);
  const alarm = (kind: string) =>
    Object.values(one.program.watches.all[0]?.state.alarms ?? {}).find((a) => a.kind === kind);
  const work = async (name: string, side: 1 | 2 = 1) => {
    await one.desk.pieces.act({ act: { kind: 'piece', piece: 'flap', side } }, `p${(count += 1)}`);
    await one.desk.pieces.act({ act: { kind: 'area', area: area(name, side) } }, `a${(count += 1)}`);
    await setImmediate();
  };
  return { ...one, iron, cure, act, put, coat, area, alarm, work };
}
