import { z } from 'zod';
import { numbersSchema, geometrySchema, idSchema, labelSchema, timeSchema } from './words.ts';
import { fileEntry } from './readings.ts';
import { route } from './route.ts';

/** A white tile a head can be set on. */
export const whiteTileSchema = z
  .strictObject({
    id: idSchema,
    name: z.string(),
    /** How its values came here: typed from its sheet, from a file, or read against another tile. */
    origin: z.enum(['typed', 'file', 'read']),
    /** Read ones: the head whose channels the values are for. */
    instrument: z.string().nullable(),
    /** nm; null where there is one value for all, or one per channel. */
    wavelengths: numbersSchema.nullable(),
    /** Reflectance factors, 0..1.1. */
    values: numbersSchema,
    /** Standard uncertainty per value, absolute; null where nothing is known. */
    sigma: numbersSchema.nullable(),
    /** The connected head is set on it. */
    inUse: z.boolean(),
    /** It can be used with the connected head. */
    usable: z.boolean(),
    /** In one sentence: what it is good for here. */
    sentence: z.string(),
    at: timeSchema,
  })
  .meta({ id: 'WhiteTile' });
export type WhiteTile = z.infer<typeof whiteTileSchema>;

export const newTileSchema = z.discriminatedUnion('from', [
  /** One value for every wavelength. */
  z.strictObject({ from: z.literal('number'), name: labelSchema, reflectance: z.number().min(0).max(1.1) }),
  /** The tile's sheet, typed in. */
  z.strictObject({
    from: z.literal('sheet'),
    name: labelSchema,
    geometry: geometrySchema.default('45/0'),
    scale: z.enum(['0-1', 'percent']).optional(),
    wavelengths: z.array(z.number().positive()).min(2).max(2000),
    values: numbersSchema.min(2),
  }),
  /** The tile's sheet as CSV, CGATS.17 text or CxF3. */
  z.strictObject({
    from: z.literal('file'),
    name: labelSchema,
    ...fileEntry,
  }),
  /** The placings read with `readOwnTile`. */
  z.strictObject({ from: z.literal('placings'), name: labelSchema }),
]);
export type NewTile = z.input<typeof newTileSchema>;

const tiles = z.array(whiteTileSchema);
const params = z.strictObject({ tileId: idSchema });

export const tileRoutes = {
  listTiles: route({
    method: 'GET',
    path: '/api/white-tiles',
    summary: 'White tiles a head can be set on',
    answer: tiles,
  }),
  addTile: route({
    method: 'POST',
    path: '/api/white-tiles',
    summary:
      'Enter a tile by its sheet, or keep the placings of your own tile; it is used from the next white on',
    body: newTileSchema,
    answer: tiles,
    status: 201,
  }),
  useTile: route({
    method: 'PUT',
    path: '/api/white-tiles/:tileId/use',
    summary: 'Set the connected head on this tile from the next white on',
    params,
    answer: tiles,
  }),
  useNoTile: route({
    method: 'DELETE',
    path: '/api/white-tiles/use',
    summary: 'Go back to the tile the program assumes',
    answer: tiles,
  }),
  deleteTile: route({
    method: 'DELETE',
    path: '/api/white-tiles/:tileId',
    summary: 'Put a tile away; readings made against it stay as they are',
    params,
    answer: tiles,
  }),
  readOwnTile: route({
    method: 'POST',
    path: '/api/instrument/own-tile',
    summary: 'Read one placing of your own tile, on a scale set with a tile of known values',
    answer: z.strictObject({ placings: z.number().int(), sentence: z.string() }),
  }),
};
