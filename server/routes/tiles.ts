import { tileRoutes } from '../api/tiles.ts';
import type { Answering } from '../answer.ts';
import type { Bench } from '../bench.ts';
import { enterTile, placeOwnTile, tilesView, useTile } from '../instrument/white-tiles.ts';
import { chooseTile, putTileAway } from '../store/tiles.ts';

export function tileAnswers(answer: Answering, { db, now, instrument }: Bench): void {
  const all = () => tilesView(db, instrument.session);
  answer(tileRoutes.listTiles, all);
  answer(tileRoutes.addTile, ({ body }) => {
    enterTile(db, instrument.session, body, now());
    return all();
  });
  answer(tileRoutes.useTile, ({ params }) => {
    useTile(db, instrument.holdSession(), params.tileId);
    return all();
  });
  answer(tileRoutes.useNoTile, () => {
    chooseTile(db, instrument.holdSession().name, undefined);
    return all();
  });
  answer(tileRoutes.deleteTile, ({ params }) => {
    putTileAway(db, params.tileId);
    return all();
  });
  answer(tileRoutes.readOwnTile, () => instrument.alone(placeOwnTile));
}
