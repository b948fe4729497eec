-- The day a film was drawn down, as last said: what its readings are old by.
create table pulled (
  seq integer primary key,
  swatch_id text not null references swatch (id),
  pulled_on text not null, -- ISO 8601 date
  at text not null
) strict;
create index pulled_of_swatch on pulled (swatch_id, seq);
create trigger pulled_is_never_changed before update on pulled
begin
  select raise(abort, 'A day is never changed; say it again.');
end;
create trigger pulled_is_never_deleted before delete on pulled
begin
  select raise(abort, 'A day is never deleted; it is part of the history.');
end;
