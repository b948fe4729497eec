import { writeCgats } from '../../src/profile/exchange/cgats/write.ts';
import { tableFromProfile } from '../../src/profile/exchange/constants-table.ts';
import { writeCsv } from '../../src/profile/exchange/csv/write.ts';
import { readProfile } from '../../src/profile/read.ts';
import type { PaletteProfile } from '../../src/profile/schema.ts';
import { withoutMakers } from '../../src/profile/without-makers.ts';
import { writeProfile } from '../../src/profile/write.ts';
import { profileRoutes, type ProfileSummary } from '../api/profiles.ts';
import { ANSWERED, type Answering } from '../answer.ts';
import type { Bench } from '../bench.ts';
import { notFound } from '../problem.ts';
import { slug } from '../store/ids.ts';
import type { Db } from '../store/open-store.ts';
import { currentPaletteId } from '../store/palettes.ts';
import {
  currentProfile,
  makeProfileCurrent,
  profileById,
  type ProfileRow,
  profilesOf,
} from '../store/profiles.ts';
import { say } from '../api/sentences/bench.ts';

export function profileAnswers(answer: Answering, bench: Bench): void {
  const { db, events } = bench;
  answer(profileRoutes.listProfiles, ({ query }) => {
    const paletteId = query.palette ?? currentPaletteId(db);
    return paletteId ? profilesOf(db, paletteId).map((row) => summaryOf(db, row)) : [];
  });
  answer(profileRoutes.getCurrentProfile, () => {
    const row = currentProfileOr404(db);
    return { summary: summaryOf(db, row), profile: profileIn(row) };
  });
  answer(profileRoutes.getProfile, ({ params }) => {
    const row = profileOr404(db, params.profileId);
    return { summary: summaryOf(db, row), profile: profileIn(row) };
  });
  answer(profileRoutes.downloadProfile, ({ params, query, res }) => {
    const row = profileOr404(db, params.profileId);
    const whole = profileIn(row);
    const given = query.makers === 'true' ? whole : withoutMakers(whole, { labels: query.labels });
    const { text, type, ending } = written(given, query.format);
    res.setHeader('cache-control', 'no-store');
    res.attachment(`${slug(row.title)}-palette-profile.${ending}`);
    res.type(type).send(text);
    return ANSWERED;
  });
  answer(profileRoutes.makeProfileCurrent, ({ params }) => {
    const row = profileOr404(db, params.profileId);
    makeProfileCurrent(db, row);
    for (const what of ['profiles', 'tubes', 'checks'] as const) events.send({ type: 'changed', what });
    return summaryOf(db, row);
  });
  answer(profileRoutes.compareProfiles, async ({ body }) => {
    const rows = [profileOr404(db, body.first), profileOr404(db, body.second)] as const;
    const [first, second] = [profileIn(rows[0]), profileIn(rows[1])];
    const pairs = Object.entries(body.pairs).map(([older, newer]) => ({ older, newer }));
    // The doubt of every difference takes seconds: beside the server's own thread.
    const { tubes, gone, added } = await bench.mixing.ask(rows[0].document, {
      kind: 'compare',
      request: { second: rows[1].document, pairs },
    });
    const label = (profile: PaletteProfile, id: string): string =>
      profile.tubes.find((tube) => tube.id === id)?.label ?? id;
    const bare = (id: string): string => id.slice(id.indexOf('/') + 1);
    const alone = (
      profile: PaletteProfile,
      id: string,
      status: 'only in the first' | 'only in the second',
    ) => ({
      tubeId: id,
      label: label(profile, id),
      status,
      masstoneDeltaE00: null,
      tintDeltaE00: null,
      strengthPercent: null,
      sentence: say('alone', { tube: label(profile, id), status }),
    });
    return {
      tubes: [
        ...tubes.map((tube) => ({
          tubeId: bare(tube.olderId),
          label: label(first, bare(tube.olderId)),
          status: 'in both' as const,
          masstoneDeltaE00: tube.colours.find((c) => c.of === 'masstone')?.deltaE00 ?? null,
          tintDeltaE00: tube.colours.find((c) => c.of === '1:4')?.deltaE00 ?? null,
          strengthPercent: tube.strengthPercent.value,
          sentence: tube.words.join(' '),
        })),
        ...gone.map((id) => alone(first, id, 'only in the first')),
        ...added.map((id) => alone(second, id, 'only in the second')),
      ],
      sentence: say('tubes-compared', { both: tubes.length, gone: gone.length, added: added.length }),
    };
  });
}

/** A stored profile; it was checked when it was kept. */
export function profileIn(row: ProfileRow): PaletteProfile {
  return readProfile(row.document);
}

/** @throws HttpProblem 404 */
export function profileOr404(db: Db, id: string): ProfileRow {
  const row = profileById(db, id);
  if (!row) throw notFound(say('no-profile', { id }));
  return row;
}

/** @throws HttpProblem 404 */
export function currentProfileOr404(db: Db): ProfileRow {
  const paletteId = currentPaletteId(db);
  const row = paletteId === undefined ? undefined : currentProfile(db, paletteId);
  if (!row) throw notFound(say('no-constants'));
  return row;
}

function summaryOf(db: Db, row: ProfileRow): ProfileSummary {
  return {
    id: row.id,
    paletteId: row.palette_id,
    title: row.title,
    createdAt: row.created_at,
    fitId: row.fit_id,
    origin: row.origin,
    tubeLabels: profileIn(row).tubes.map((tube) => tube.label),
    current: currentProfile(db, row.palette_id)?.id === row.id,
  };
}

function written(
  profile: PaletteProfile,
  format: 'json' | 'csv' | 'cgats',
): { text: string; type: string; ending: string } {
  switch (format) {
    case 'json':
      return { text: writeProfile(profile), type: 'application/json', ending: 'json' };
    case 'csv':
      return { text: writeCsv(tableFromProfile(profile)).text, type: 'text/csv', ending: 'csv' };
    case 'cgats':
      return { text: writeCgats(tableFromProfile(profile)).text, type: 'text/plain', ending: 'txt' };
  }
}
