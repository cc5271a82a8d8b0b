import type { Cement } from '../../../shared/cure/cement.ts';
import type { CoatAct } from '../../../shared/messages/cure.ts';
import type { Coat } from '../../../shared/shop/drying.ts';
import type { ShopHappened } from '../../../shared/shop/entry.ts';
import { isTouched } from '../../../shared/shop/lately.ts';
import { cementRefusals, coatRefusals } from '../../../shared/words/drying.ts';
import { workRefusals } from '../../../shared/words/work.ts';
import { Refusal } from '../../refusal.ts';
import { cementOf } from '../../settings/cements.ts';
import { pieceOf } from '../../settings/pieces.ts';
import type { Settings } from '../../settings/settings.ts';
import type { DryingKeeper } from './drying-keeper.ts';
import { coatPlace } from './places.ts';

export interface ActParts {
  readonly keeper: DryingKeeper;
  readonly settings: Settings;
  readonly nowUtcMs: number;
  readonly newId: () => string;
}

/** What the journal has to have of an act. Throws `Refusal` where it can't be taken. */
export function coatHappened(act: CoatAct, parts: ActParts): ShopHappened {
  switch (act.kind) {
    case 'start':
      return put(act, parts);
    case 'check':
      return checked(act, parts);
    case 'end':
      return { kind: 'ended', coat: openCoat(act.coat, parts).id, why: act.why };
    case 'fire-answer': {
      const { cement, coat } = known(act.coat, parts);
      if (!cement.flammable) throw new Refusal('conflict', coatRefusals.noFire(cement.name), 'act.coat');
      return { kind: 'fire-answer', coat: coat.id, answer: act.answer };
    }
    case 'take-back':
      return takenBack(act.of, parts);
  }
}

function put(act: Extract<CoatAct, { kind: 'start' }>, parts: ActParts): ShopHappened {
  const { settings, nowUtcMs, newId } = parts;
  const cement = cementOf(settings, act.cement, 'act.cement');
  if (cement.archived) throw new Refusal('conflict', cementRefusals.archived(cement.name), 'act.cement');
  const piece = pieceOf(settings, act.piece);
  if (piece.archived) throw new Refusal('conflict', workRefusals.archived(piece.name), 'act.piece');
  const where = { piece: piece.id, pieceVersion: piece.version };
  const seen = new Set<string>();
  for (const [i, { side, area }] of act.places.entries()) {
    const at = `act.places.${i}`;
    if (side > piece.sides.length) throw new Refusal('conflict', workRefusals.noSide(piece.name), at);
    if (area !== null && !piece.areas.some((one) => one.id === area && one.side === side))
      throw new Refusal('conflict', workRefusals.noArea(area, piece.name), at);
    const { placeName } = coatPlace(settings, { ...where, side, area });
    if (seen.has(`${side} ${area}`)) throw new Refusal('invalid', coatRefusals.twice(placeName), at);
    seen.add(`${side} ${area}`);
  }
  return {
    kind: 'coats',
    cement: cement.id,
    cementVersion: cement.version,
    ...where,
    places: act.places.map((place) => ({ ...place, coat: newId() })),
    fromUtcMs: Math.round(nowUtcMs - act.agoS * 1000),
  };
}

function checked(act: Extract<CoatAct, { kind: 'check' }>, parts: ActParts): ShopHappened {
  const { cement, coat } = known(act.coat, parts);
  const { stage, found } = act;
  if (!cement.stages.some(({ kind }) => kind === stage))
    throw new Refusal('conflict', coatRefusals.noStage(stage, cement.name), 'act.stage');
  // A later word counts: found tacky after all it is tacky.
  const clock = parts.keeper.clocks.open().find((one) => one.coat.id === coat.id)?.clock;
  const said = clock?.stages.find(({ kind }) => kind === stage)?.saidDryMs ?? null;
  if (found === 'dry' && said !== null) throw new Refusal('conflict', coatRefusals.saidDry, 'act.stage');
  const { leastS, mostS } = parts.keeper.clocks.cured(coat, cement);
  // Where the air isn't known well a tap teaches no more than is sure.
  const curedS = found === 'tacky' ? leastS : mostS;
  return { kind: 'checked', coat: coat.id, stage, found, curedS };
}

function takenBack(of: string, { keeper }: ActParts): ShopHappened {
  if (!commands(keeper).has(of)) throw new Refusal('unknown', coatRefusals.nothingToTakeBack, 'act.of');
  const started = Object.values(keeper.drying.coats).filter(({ by }) => by === of);
  if (started.some(isTouched)) throw new Refusal('conflict', coatRefusals.touched, 'act.of');
  return { kind: 'taken-back', of };
}

function openCoat(id: string, { keeper }: ActParts): Coat {
  const coat = keeper.drying.coats[id];
  if (coat === undefined) throw new Refusal('unknown', coatRefusals.none, 'act.coat');
  if (coat.ended !== null) throw new Refusal('conflict', coatRefusals.ended, 'act.coat');
  return coat;
}

function known(id: string, parts: ActParts): { readonly coat: Coat; readonly cement: Cement } {
  const coat = openCoat(id, parts);
  const cement = parts.keeper.clocks.cementOf(coat);
  if (cement === null) throw new Refusal('unknown', cementRefusals.none(coat.cement), 'act.coat');
  return { coat, cement };
}

/** The commands whose doing still stands. */
const commands = ({ drying }: DryingKeeper): ReadonlySet<string> =>
  new Set(
    Object.values(drying.coats).flatMap(({ by, checks, ended, fire }) =>
      [by, ...checks.map((check) => check.by), ended?.by, fire?.by].filter((one) => one !== undefined),
    ),
  );
