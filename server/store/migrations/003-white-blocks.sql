-- What became of a reading when the white after it was in: worked out again against the white between, or sent back.
create table block_verdict (
  seq integer primary key,
  reading_id text not null references reading (id),
  accepted integer not null check (accepted in (0, 1)),
  reason text not null default '',
  channel_values text, -- JSON; null when it was sent back
  at text not null
) strict;
create index verdict_of_reading on block_verdict (reading_id, seq);
create trigger block_verdict_is_never_changed before update on block_verdict
begin
  select raise(abort, 'A verdict is never changed; read again.');
end;
create trigger block_verdict_is_never_deleted before delete on block_verdict
begin
  select raise(abort, 'A verdict is never deleted; it is part of the history.');
end;
