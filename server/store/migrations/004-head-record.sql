-- Tests of a head, passed or not, with what was seen.
create table head_test (
  seq integer primary key,
  instrument text not null,
  test text not null check (test in ('aperture', 'gain', 'superposition', 'lift', 'light leak')),
  passed integer not null check (passed in (0, 1)),
  body text not null, -- JSON: what was found, the gains and their ratios where it was a gain step
  at text not null
) strict;
create index test_of_head on head_test (instrument, test, seq);
create trigger head_test_is_never_changed before update on head_test
begin
  select raise(abort, 'A test of the head is never changed; test again.');
end;
create trigger head_test_is_never_deleted before delete on head_test
begin
  select raise(abort, 'A test of the head is never deleted; it is part of the history.');
end;

-- White tiles a head can be set on: typed in, from a file, or read against another tile.
create table tile (
  id text primary key,
  name text not null,
  origin text not null check (origin in ('typed', 'file', 'read')),
  instrument text, -- read ones: the head whose channels the values are for
  body text not null, -- JSON: values, and wavelengths or standard uncertainties where there are
  put_away integer not null default 0,
  created_at text not null
) strict;
