-- The bench: palettes, tubes, what was painted, what was read, and what was made of it.

create table palette (
  id text primary key,
  title text not null,
  note text not null default '',
  demo integer not null default 0,
  created_at text not null
) strict;

create table tube (
  id text primary key,
  palette_id text not null references palette (id),
  position integer not null,
  label text not null,
  pigments text not null, -- JSON list
  batch text not null default '',
  bought text,
  drying text not null default 'unknown',
  role text check (role is null or role = 'white'),
  density real,
  note text not null default '',
  practice_paint_id text,
  replaces text references tube (id),
  put_away integer not null default 0,
  created_at text not null
) strict;
create unique index one_white_per_palette on tube (palette_id) where role = 'white';

-- How readings are to be understood: kind, geometry, wavelengths or bands or white. One row per distinct description.
create table form (
  id text primary key,
  description text not null unique, -- JSON
  created_at text not null
) strict;

create table ladder (
  id text primary key,
  palette_id text not null references palette (id),
  tube_id text not null references tube (id),
  white_tube_id text not null references tube (id),
  plan text not null, -- JSON: plan, wanted repeats, the request it was made for
  started_at text not null
) strict;

create table mixture_check (
  id text primary key,
  palette_id text not null references palette (id),
  title text not null,
  masses text not null, -- JSON: tube id to mass
  film text not null default '{}', -- JSON: film and backing, as in a swatch set
  truth text, -- JSON: noise-free reflectance, where a file gave one
  note text not null default '',
  put_away integer not null default 0,
  created_at text not null
) strict;

-- One painted patch, or one bare card.
create table swatch (
  id text primary key,
  palette_id text not null references palette (id),
  ladder_id text references ladder (id),
  check_id text references mixture_check (id),
  kind text not null check (kind in ('rung', 'card', 'check', 'file')),
  position integer not null,
  name text not null,
  white_parts real, -- rungs: parts of white to one of paint
  parts text not null default '[]', -- rungs: JSON list of planned parts
  painted text not null default '{}', -- file swatches: JSON of masses, made, film, backing as the file had them
  film text not null default 'opaque' check (film in ('opaque', 'card')),
  side text check (side is null or side in ('black', 'white'))
) strict;
create index swatch_of_ladder on swatch (ladder_id);
create index swatch_of_palette on swatch (palette_id);

-- Readings are only ever added.
create table reading (
  id text primary key,
  seq integer not null unique,
  swatch_id text not null references swatch (id),
  form_id text not null references form (id),
  source text not null check (source in ('head', 'practice', 'typed', 'file')),
  over_what text not null check (over_what in ('opaque', 'black', 'white')),
  channel_values text not null, -- JSON list: reflectance factor per channel
  raw text not null default '{}', -- JSON: counts, dark, calibration and settings it was worked out from
  taken_at text not null
) strict;
create index reading_of_swatch on reading (swatch_id);
create trigger reading_is_never_changed before update on reading
begin
  select raise(abort, 'A reading is never changed; send it back and read again.');
end;
create trigger reading_is_never_deleted before delete on reading
begin
  select raise(abort, 'A reading is never deleted; send it back and read again.');
end;

-- What was done on a ladder or a check, in order; undo and redo are entries too.
create table history (
  seq integer primary key,
  ladder_id text references ladder (id),
  check_id text references mixture_check (id),
  kind text not null check (kind in ('reading', 'weigh', 'decide', 'undo', 'redo', 'close', 'open')),
  body text not null, -- JSON
  at text not null,
  check ((ladder_id is null) <> (check_id is null))
) strict;
create index history_of_ladder on history (ladder_id, seq);
create index history_of_check on history (check_id, seq);
create trigger history_is_never_changed before update on history
begin
  select raise(abort, 'The history is never changed; undo adds to it.');
end;
create trigger history_is_never_deleted before delete on history
begin
  select raise(abort, 'The history is never deleted; undo adds to it.');
end;

-- Dark, white tile, black trap and check tile as read.
create table calibration (
  seq integer primary key,
  instrument text not null,
  step text not null check (step in ('dark', 'white tile', 'black trap', 'check tile')),
  body text not null, -- JSON
  at text not null
) strict;
create trigger calibration_is_never_changed before update on calibration
begin
  select raise(abort, 'A calibration reading is never changed; read it again.');
end;
create trigger calibration_is_never_deleted before delete on calibration
begin
  select raise(abort, 'A calibration reading is never deleted; read it again.');
end;

create table fit (
  id text primary key,
  palette_id text not null references palette (id),
  form_id text not null references form (id),
  state text not null check (state in ('pending', 'running', 'complete', 'failed', 'cancelled')),
  settings text not null, -- JSON: what, with its readings, makes the fit again
  left_out text not null default '[]', -- JSON list of sentences
  sentence text not null default '',
  result text, -- JSON
  started_at text not null,
  finished_at text
) strict;

-- Exactly the readings a fit came from.
create table fit_reading (
  fit_id text not null references fit (id),
  reading_id text not null references reading (id),
  primary key (fit_id, reading_id)
) strict, without rowid;

create table profile (
  id text primary key,
  palette_id text not null references palette (id),
  fit_id text references fit (id),
  origin text not null check (origin in ('fit', 'import')),
  title text not null,
  document text not null, -- the profile file as written
  created_at text not null
) strict;
create trigger profile_is_never_changed before update on profile
begin
  select raise(abort, 'A profile is never changed; fit again or import another.');
end;

create trigger profile_is_never_deleted before delete on profile
begin
  select raise(abort, 'A profile is never deleted; it is part of the history.');
end;

create table setting (
  name text primary key,
  body text not null -- JSON
) strict;
