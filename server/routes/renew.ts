import type { SwatchSet } from '../../src/calibrate/swatch-set/schema.ts';
import { rereadSwatches } from '../../src/profile/drift/reread-swatches.ts';
import { yearlyReread } from '../../src/profile/drift/yearly-reread.ts';
import { readProfile } from '../../src/profile/read.ts';
import type { ImportRequest } from '../api/imports.ts';
import { renewRoutes } from '../api/renew.ts';
import type { Answering } from '../answer.ts';
import type { Bench } from '../bench.ts';
import { importProfile } from '../importing/import-profile.ts';
import { openFile } from '../importing/open-file.ts';
import { unusable } from '../problem.ts';
import { newId } from '../store/ids.ts';
import { addProfile, makeProfileCurrent } from '../store/profiles.ts';
import { addTube, tubeById } from '../store/tubes.ts';
import { profileOr404 } from './profiles.ts';
import { say } from '../api/sentences/bench.ts';

/** What keeps a palette true over the years: a tube replaced, two whites merged, swatches read again. */
export function renewAnswers(answer: Answering, bench: Bench): void {
  const { db, events } = bench;
  answer(renewRoutes.replaceTube, async ({ params, body }) => {
    const row = profileOr404(db, params.profileId);
    const at = bench.now();
    const set = setIn(body.file, at);
    const known = tubeById(db, body.tube.id);
    if (known && known.palette_id !== row.palette_id) {
      throw unusable(say('tube-of-other', { id: body.tube.id }), 'tube.id');
    }
    const { oldTubeId: oldId, tube, inSet, oldTube, recipes, keep } = body;
    const made = await bench.mixing.ask(row.document, {
      kind: 'replace',
      request: { oldId, set, tube, inSet, oldTube, recipes, when: at },
    });
    const { colours, strengthPercent } = made.difference;
    const profileId = keep ? newId('profile') : null;
    if (profileId !== null) {
      db.transaction(() => {
        if (tubeById(db, tube.id) === undefined)
          addTube(db, row.palette_id, wordsFor(body, set), at, tube.id);
        const kept = { ...row, id: profileId, fit_id: null, origin: 'import' as const };
        const next = { ...kept, document: made.profile, created_at: at };
        addProfile(db, next);
        makeProfileCurrent(db, next);
      })();
      for (const what of ['profiles', 'tubes', 'checks'] as const) events.send({ type: 'changed', what });
    }
    return {
      sentences: [...made.words],
      strengthPercent: { ...strengthPercent },
      colours: colours.map(({ of, deltaE00, beyondDoubt }) => ({ of, deltaE00, beyondDoubt })),
      recipes: made.recipes.map((r) => ({ ...r, before: { ...r.before }, masses: { ...r.masses } })),
      profileId,
      tubeId: tube.id,
    };
  });
  answer(renewRoutes.mergeProfiles, async ({ body }) => {
    const [first, second] = [profileOr404(db, body.first), profileOr404(db, body.second)];
    const at = bench.now();
    const bridge = body.bridge && setIn(body.bridge, at);
    const { secondWhite, sameIds } = body;
    const { profile, words } = await bench.mixing.ask(first.document, {
      kind: 'merge',
      request: { second: second.document, bridge, secondWhite, sameIds, when: at },
    });
    const title = `${first.title} and ${second.title}`.slice(0, 200);
    const kept = importProfile(db, readProfile(profile), title, at);
    for (const what of ['palettes', 'tubes', 'checks', 'profiles'] as const)
      events.send({ type: 'changed', what });
    return { paletteId: kept.paletteId, profileId: kept.profileId, sentences: [...words] };
  });
  answer(renewRoutes.rereadPalette, ({ body }) => {
    const at = bench.now();
    const { verdict, swatches, words } = yearlyReread(
      rereadSwatches(setIn(body.first, at), setIn(body.again, at)),
    );
    return { verdict, swatches: swatches.map((s) => ({ ...s })), words: [...words] };
  });
}

/** @throws HttpProblem where the file is a profile. */
function setIn(file: ImportRequest, at: string): SwatchSet {
  const opened = openFile(file, at);
  if (opened.kind === 'swatch set') return opened.set;
  throw unusable(say('not-a-set', { file: file.fileName }));
}

function wordsFor(
  body: {
    readonly oldTubeId: string;
    readonly tube: { readonly label: string };
    readonly inSet?: string | undefined;
  },
  set: SwatchSet,
): Parameters<typeof addTube>[2] {
  const read = set.tubes.find((t) => (body.inSet ? t.id === body.inSet : t.role !== 'white'));
  return {
    label: body.tube.label,
    pigments: read?.pigments ?? [],
    batch: '',
    bought: null,
    drying: 'unknown',
    role: null,
    density: read?.density ?? null,
    note: '',
    practicePaintId: null,
    replaces: body.oldTubeId,
  };
}
